import type { Edit } from '@soundpost/server/protocol';
import type { SpeedRange } from './machine/views.ts';
import type { SaidOf } from './origin.ts';
import type { WhyView } from './why-views.ts';

/** How the engineer wants values shown. */
export interface ShowingChoice {
  readonly units: 'metric' | 'us';
  readonly decimal: 'point' | 'comma';
  /** Amplitudes as that detector reads a sine of them; `stated` leaves each as it is stated. */
  readonly detector: 'stated' | 'rms' | 'peak' | 'peak-to-peak';
}

export type Outcome = 'meets' | 'warns' | 'cannot tell' | 'fails';

/** Where a finding speaks of, and what it says; the sentences are already in the reader's units. */
export interface FindingView {
  readonly key: string;
  readonly rule: string;
  readonly weight: string;
  readonly at: string;
  readonly machine: string | undefined;
  readonly point: string | undefined;
  readonly found: string;
  readonly limit: string;
  readonly because: string;
  readonly remedy: readonly string[];
  readonly asks: string | undefined;
  readonly sources: string;
}

export interface QuestionView {
  readonly of: string;
  readonly what: string;
  readonly ask: string | undefined;
  readonly why: string;
  /** The points it stands at. */
  readonly points: readonly string[];
  /** The part of the catalogue whose sheet lacks it, where it is one. */
  readonly part: string | undefined;
}

/** What would become of a point, before anything is changed. */
export interface ForeseenView {
  readonly of: string;
  readonly before: Outcome | 'no chain';
  readonly after: Outcome | 'no chain';
}

/** One line of the table of measuring points. */
export interface PointRow {
  readonly of: string;
  readonly machine: string;
  readonly name: string;
  readonly location: string;
  readonly direction: string;
  readonly installation: string;
  readonly transducer: string;
  readonly mount: string;
  readonly cable: string;
  readonly cableLength: string;
  readonly input: string;
  /** What the file says of these values beside them, where it says something. */
  readonly said: { readonly [Of in 'location' | 'direction' | 'cableLength']?: SaidOf };
  readonly targets: number;
  /** Targets met; absent while the point is being worked out. */
  readonly covered: number | undefined;
  readonly outcome: Outcome | 'no chain' | undefined;
  /** Findings that are more than notes. */
  readonly findings: number | undefined;
  /** The rules those findings are of. */
  readonly rules: readonly string[];
  /** The least margin of all judgements that have one; below zero where one fails by it. */
  readonly margin: string | undefined;
}

export interface MachineRow {
  readonly name: string;
  readonly title: string;
  readonly points: number;
}

/** The plant at a glance: every row at once, its results as they come. */
export interface PlantView {
  readonly name: string;
  readonly owner: string;
  readonly revision: string;
  readonly date: string;
  readonly machines: readonly MachineRow[];
  readonly points: readonly PointRow[];
  readonly verdict: string | undefined;
  readonly findings: readonly FindingView[];
  readonly questions: readonly QuestionView[];
  /** How many machines are read and how many worked out, of how many. */
  readonly progress: { readonly read: number; readonly done: number; readonly of: number };
}

export interface SheetView {
  readonly name: string;
  readonly title: string;
  readonly markup: string;
}

/** A number a hand may drag: named as the engineer knows it, as stated, and where in the file it stands if it stands there. */
export interface HandleView {
  readonly key: string;
  readonly of: string;
  readonly what: string;
  readonly shown: string;
  readonly path: readonly (string | number)[] | undefined;
}

/** A part that may stand in a place of the chain. */
export interface PlaceView {
  readonly place: 'transducer' | 'mount' | 'cable' | 'input';
  readonly chosen: string | undefined;
  readonly choices: readonly { readonly name: string; readonly remark: string }[];
}

/** A judgement as the page tells it, with its three depths. */
export interface JudgementView {
  readonly rule: string;
  readonly target: string | undefined;
  readonly what: string;
  readonly found: string;
  readonly limit: string;
  readonly outcome: Outcome;
  readonly margin: string | undefined;
}

/** A judgement that decides, in words. */
export interface DecidingView {
  readonly words: string;
  readonly rule: string;
  readonly target: string | undefined;
  readonly what: string;
}

/** What follows a hand within the frame. */
export interface PictureView {
  readonly outcome: Outcome | 'no chain';
  /** The amplitude chart at the width asked for, as SVG. */
  readonly chart: string;
  /** What stops the chain, or what would stop it first. */
  readonly decides: readonly DecidingView[];
  /** The numbers the hand has moved, by their keys, as they now are. */
  readonly shown: Readonly<Record<string, string>>;
  readonly speed: string | undefined;
}

/** The same with all that is told a moment later. */
export interface TrialView extends PictureView {
  readonly judgements: readonly JudgementView[];
  /** Every number of the chain as it now stands. */
  readonly handles: readonly HandleView[];
  readonly milliseconds: number;
}

export interface PointView {
  readonly of: string;
  readonly machine: string;
  readonly name: string;
  readonly location: string;
  readonly direction: string;
  readonly path: readonly (string | number)[];
  readonly places: readonly PlaceView[];
  /** What stands in the line as stated, and what else may: supplies, barriers, isolators. */
  readonly inLine: readonly string[];
  readonly lineChoices: PlaceView['choices'];
  /** The speed or line frequency the machine may run at, for the hand that drags it. */
  readonly speed: SpeedRange | undefined;
  readonly trial: TrialView;
  readonly findings: readonly FindingView[];
}

export interface SheetName {
  readonly name: string;
  readonly title: string;
}

/** What a hand holds another way than the file states it. */
export interface TrialAsked {
  readonly of: string;
  /** Decades by which each handle is moved, by its key. */
  readonly moved: Readonly<Record<string, number>>;
  readonly parts: Readonly<Partial<Record<PlaceView['place'], string>>>;
  /** What stands in the line, from the transducer to the input; as stated where absent. */
  readonly inLine?: readonly string[];
  /** Reference speed or line frequency in hertz; as stated where absent. */
  readonly speed: number | undefined;
  /** How wide the chart is set; for a desk where absent. */
  readonly width?: 'wide' | 'narrow';
}

export interface CandidateView {
  readonly transducer: string;
  readonly mount: string;
  readonly remark: string;
  readonly outcome: Outcome;
  readonly margin: string;
  readonly chosen: boolean;
  readonly cells: readonly {
    readonly target: string;
    readonly outcome: Outcome;
    readonly margin: string;
    readonly reason: string;
  }[];
}

export interface FlipView {
  readonly of: string;
  readonly what: string;
  readonly stated: string;
  readonly flipsAt: string;
  readonly to: string;
  readonly decides: string;
  /** The same in three depths. */
  readonly why: WhyView;
}

/** What stands in the way of reading the file, in words with the place. */
export interface RefusalView {
  readonly message: string;
}

export type Opened = { readonly refused: RefusalView } | { readonly plant: PlantView };

export interface Edited {
  readonly text: string;
  readonly undo: readonly Edit[];
}
