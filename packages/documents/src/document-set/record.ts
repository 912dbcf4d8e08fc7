import type { Missing } from '@soundpost/core';
import type { Drawing } from '../drawing/drawing.ts';

/** What stands in a cell. A number keeps its full value for whoever computes on, beside the text that is set. */
export type Cell =
  | { readonly is: 'text'; readonly text: string }
  /** In the unit of its column. */
  | { readonly is: 'number'; readonly value: number; readonly shown: string }
  /** With a unit of its own. */
  | { readonly is: 'measure'; readonly value: number; readonly shown: string; readonly unit: string }
  | { readonly is: 'unknown'; readonly missing: readonly Missing[] }
  /** Does not apply here. */
  | { readonly is: 'none' }
  /** To be written by hand. */
  | { readonly is: 'blank' };

/** How the cells of a column are set. Units of a `number` stand in the head, those of a `measure` beside each value. */
export interface SetColumn {
  readonly head: string;
  readonly kind: 'text' | 'number' | 'measure' | 'blank';
  readonly unit?: string;
  /** Share of the width of the paper, against the other columns. */
  readonly width: number;
}

export interface SetTable {
  readonly is: 'table';
  /** Short, for the tab of a workbook and the name of a file: `cables`. */
  readonly name: string;
  readonly caption: string;
  readonly columns: readonly SetColumn[];
  readonly rows: readonly (readonly Cell[])[];
  /** What stands there where there is no row. */
  readonly empty: string;
}

export interface Fact {
  readonly term: string;
  readonly value: string;
}

/** A formula with the numbers put in and what came of it. */
export interface SetDerivation {
  readonly formula: string;
  readonly substituted?: string;
  readonly notes: readonly string[];
}

/** The pieces a sheet is made of, from top to bottom. */
export type Block =
  | { readonly is: 'heading'; readonly text: string }
  | { readonly is: 'paragraph'; readonly text: string }
  /** Set small; what a reader may skip. */
  | { readonly is: 'note'; readonly text: string }
  /** Framed: what nobody may overlook. */
  | { readonly is: 'caution'; readonly text: string }
  | { readonly is: 'list'; readonly entries: readonly string[] }
  | { readonly is: 'facts'; readonly facts: readonly Fact[] }
  | { readonly is: 'derivation'; readonly derivation: SetDerivation }
  /** May be drawn anew each time it is looked at. */
  | { readonly is: 'drawing'; readonly name: string; readonly drawing: Drawing; readonly caption: string }
  | SetTable
  | { readonly is: 'signatures'; readonly signed: readonly string[] };

export type BlockOf<Is extends Block['is']> = Extract<Block, { readonly is: Is }>;

/** What begins on paper of its own: one loop, one point, or the whole list. */
export interface DocumentSheet {
  readonly title: string;
  /** May be made anew each time they are looked at: whoever needs them twice keeps them. */
  readonly blocks: readonly Block[];
  /** All that the blocks are made from, where that is not the whole design: the same objects give the same blocks. */
  readonly from?: readonly object[];
}

/** What stands in the title block and at the foot of every page; said by whoever issues, never taken from a clock. */
export interface IssueFacts {
  readonly plant: string;
  readonly owner: string;
  readonly project: string;
  readonly revision: string;
  readonly date: string;
  readonly preparedBy: string;
  readonly contentHash: string;
  /** Where it may not be built from: why. */
  readonly preliminary?: string;
}

export type Orientation = 'portrait' | 'landscape';

/** One document as it is issued, in no typesetting. */
export interface DocumentRecord {
  readonly kind: string;
  readonly title: string;
  readonly orientation: Orientation;
  readonly issue: IssueFacts;
  readonly sheets: readonly DocumentSheet[];
}

/** Every table of a document, in order. */
export function tablesOf({ sheets }: DocumentRecord): readonly SetTable[] {
  return sheets.flatMap(({ blocks }) => blocks.filter((each) => each.is === 'table'));
}

/** Every drawing of a document, in order. */
export function drawingsIn({ sheets }: DocumentRecord): readonly BlockOf<'drawing'>[] {
  return sheets.flatMap(({ blocks }) => blocks.filter((each) => each.is === 'drawing'));
}
