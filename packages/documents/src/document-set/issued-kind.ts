import type { Design, Showing } from '@soundpost/core';
import { madeSheet } from './made-sheet.ts';
import type { Block, DocumentRecord, DocumentSheet, IssueFacts, Orientation } from './record.ts';
import { unknownIn } from './set-table.ts';

/** A kind of document that is issued: one file, one line in `kinds.ts`. A view of a design that computes nothing. */
export interface IssuedKind<Kind extends string = string> {
  /** As it is asked for and as its files are called: `cable-schedule`. */
  readonly kind: Kind;
  readonly title: string;
  /** Who reads it, and what for. */
  readonly readers: string;
  readonly orientation: Orientation;
  /** None where the plant has nothing of the sort. */
  sheets(design: Design, showing: Showing): readonly DocumentSheet[];
}

export function issuedKind<const Kind extends string>(definition: IssuedKind<Kind>): IssuedKind<Kind> {
  return definition;
}

/** The record of one kind of document; nothing where the plant gives it no sheet. */
export function documentRecord(
  { kind, title, orientation, sheets }: IssuedKind,
  design: Design,
  issue: IssueFacts,
  showing: Showing = {},
): DocumentRecord | undefined {
  const made = sheets(design, showing).map(withUnknowns);
  return made.length === 0 ? undefined : { kind, title, orientation, issue, sheets: made };
}

/** In a table there is room for the word unknown only; what it is that is missing is said below. */
function withUnknowns(sheet: DocumentSheet): DocumentSheet {
  const whole = ({ blocks }: DocumentSheet) => [...blocks, ...unknownBelow(blocks)];
  return sheet.from === undefined
    ? { title: sheet.title, blocks: whole(sheet) }
    : madeSheet(sheet.title, [sheet], whole);
}

function unknownBelow(blocks: readonly Block[]): readonly Block[] {
  const missing = [...new Set(blocks.flatMap((each) => (each.is === 'table' ? unknownIn(each) : [])))];
  const told = missing.filter((each) => each !== 'unknown').map((each) => each.replace(/^unknown: /, ''));
  if (told.length === 0) return [];
  return [
    { is: 'heading', text: 'Unknown on this sheet' },
    { is: 'list', entries: told },
  ];
}
