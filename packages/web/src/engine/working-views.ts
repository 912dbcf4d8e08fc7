import type { WhyView } from './why-views.ts';

/** The formulas of one room, by name. */
export interface WorkingShelf {
  readonly room: string;
  readonly workings: readonly { readonly name: string; readonly title: string; readonly words: string }[];
}

/** One thing a formula asks for. */
export interface InputView {
  readonly name: string;
  readonly symbol: string | undefined;
  readonly meaning: string;
  readonly expected: string;
  readonly example: string;
  /** What the worked example puts there; empty where it leaves it out. */
  readonly initial: string;
  readonly optional: boolean;
  readonly entry: 'line' | 'choice' | 'lines' | 'file';
  readonly choices: readonly string[];
  /** Whether a result can be drawn against it. */
  readonly varies: boolean;
}

export interface CitedView {
  readonly title: string;
  readonly place: string | undefined;
  /** How it is known what the source says: read, second-hand, from memory. */
  readonly how: string;
  readonly note: string;
}

export interface WorkingSheetView {
  readonly name: string;
  readonly title: string;
  readonly inputs: readonly InputView[];
  readonly outputs: readonly {
    readonly name: string;
    readonly symbol: string | undefined;
    readonly meaning: string;
    readonly formula: string;
    readonly drawn: boolean;
  }[];
  readonly holds: string;
  readonly sources: readonly CitedView[];
}

/** What stands in each field; of a file its content, and its name beside. */
export interface WorkingAsked {
  readonly name: string;
  readonly typed: Readonly<Record<string, string>>;
  readonly files: Readonly<Record<string, string>>;
}

export interface ResultView {
  readonly name: string;
  readonly shown: string;
  readonly formula: string;
  readonly substituted: string;
  /** The same in three depths. */
  readonly why: WhyView;
}

export interface WorkedView {
  readonly results: readonly ResultView[];
  /** Why a field cannot be read, by its name. */
  readonly refused: Readonly<Record<string, string>>;
  /** Why nothing follows from fields that can all be read. */
  readonly refusedWhole: string | undefined;
  readonly doubts: readonly { readonly found: string; readonly because: string; readonly remedy: readonly string[] }[];
  /** The same on the command line. */
  readonly command: string;
}

export interface PlotAsked extends WorkingAsked {
  readonly input: string;
  readonly output: string;
  /** The ends of the range as typed; a decade to each side where they are empty. */
  readonly from: string;
  readonly to: string;
}

export type PlotView =
  | { readonly refused: string; readonly at: 'from' | 'to' | 'whole' }
  | {
      readonly wide: string;
      readonly narrow: string;
      readonly input: string;
      readonly output: string;
      readonly inputSymbol: string | undefined;
      readonly outputSymbol: string | undefined;
      readonly rows: readonly { readonly input: string; readonly output: string; readonly stated: boolean }[];
    };
