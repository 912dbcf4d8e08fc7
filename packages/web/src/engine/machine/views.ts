import type { FindingView, PointRow, SheetView } from '../views.ts';
import type { KindForm, RoleForm } from './building-views.ts';

/** How a value stands in the file: its text and whence it is known, or that it is unknown or left out. */
export interface StatementForm {
  readonly value: string;
  readonly status: string;
  readonly source: string;
  /** Of a value that is not known: who could answer, and the bounds it is believed to lie between. */
  readonly ask?: string;
  readonly low?: string;
  readonly high?: string;
}

/** One field of a data sheet, ready to be typed into. */
export interface FieldForm {
  readonly key: string;
  readonly words: string;
  readonly symbol: string | undefined;
  readonly meaning: string;
  readonly expected: string;
  readonly example: string;
  /** For one of a list of words. */
  readonly choices: readonly string[] | undefined;
  readonly mayBeLeftOut: boolean;
  /** Whether bounds can be believed of it where it is not known. */
  readonly mayBeBounded: boolean;
  /** A value without a word of how it is known: the file has no place for one. */
  readonly plain: boolean;
  readonly path: readonly (string | number)[];
  readonly statement: StatementForm;
  /** The value in the reader's units, where that is not what was typed. */
  readonly shown: string | undefined;
  /** Who could answer and what is believed, where the value is not known. */
  readonly unknown: string | undefined;
}

/** A data sheet as a form: of the machine, of how it is run, of one element. */
export interface SheetForm {
  readonly key: string;
  readonly title: string;
  readonly kind: string;
  /** On which shafts it stands. */
  readonly stands: string;
  /** What is stated, in one line. */
  readonly summary: string;
  readonly fields: readonly FieldForm[];
  /** Of an element: its name, and the shaft in each of its roles. */
  readonly element?: ElementForm;
}

/** Where an element stands, to be changed in place. */
export interface ElementForm {
  readonly name: string;
  readonly first: boolean;
  readonly last: boolean;
  readonly roles: readonly (RoleForm & { readonly shaft: string })[];
}

/** How a machine is run, to be changed in place. */
export interface OperationForm {
  readonly by: 'shaft' | 'line';
  readonly of: string;
  readonly motors: readonly string[];
  readonly states: readonly string[];
}

/** The shafts of a machine, and what stands on each. */
export interface ShaftForm {
  readonly name: string;
  readonly carries: string;
}

/** A point with where it sits in the drawing. */
export interface PlacedPoint {
  readonly number: number;
  readonly row: PointRow;
  readonly at: string | undefined;
  readonly toldBy: string | undefined;
  /** What it is there to listen to; empty where nothing is said, and it is the whole train. */
  readonly hears: readonly string[];
  readonly seen: string | undefined;
  readonly rotation: string | undefined;
}

/** What the speed of everything follows from, and over which range in hertz. */
export interface SpeedRange {
  readonly of: string;
  readonly low: number;
  readonly high: number;
  readonly shownLow: string;
  readonly shownHigh: string;
}

/** A machine as its view shows it, but for the speed under the hand. */
export interface MachineBench {
  readonly name: string;
  readonly title: string;
  readonly train: string;
  readonly points: readonly PlacedPoint[];
  readonly findings: readonly FindingView[];
  readonly forms: readonly SheetForm[];
  readonly shafts: readonly ShaftForm[];
  readonly operation: OperationForm;
  /** What can be added to the train. */
  readonly kinds: readonly KindForm[];
  readonly installations: readonly string[];
  readonly statuses: readonly string[];
  /** Nothing where the range is not known. */
  readonly speed: SpeedRange | undefined;
  readonly mapCaption: string;
  readonly sheets: readonly SheetView[];
}

/** A speed as a hand drags it, in hertz, or as it is typed. */
export type SpeedAsked = { readonly at: number } | { readonly typed: string };

export interface HeldSpeed {
  readonly at: number;
  readonly shown: string;
  /** Said where the speed lies outside the stated range. */
  readonly outside: string | undefined;
  readonly map: string | undefined;
  readonly narrowMap: string | undefined;
  readonly lines: string;
  readonly close: string;
  readonly meetings: string;
}

export type HeldAnswer = HeldSpeed | { readonly refused: string };
