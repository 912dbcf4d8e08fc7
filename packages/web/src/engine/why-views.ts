import type { SpeedAsked } from './machine/views.ts';
import type { Outcome, TrialAsked } from './views.ts';
import type { CitedView } from './working-views.ts';

/** Why a number or a judgement is what it is, in three depths. */
export interface WhyView {
  readonly title: string;
  /** What is judged, of a judgement. */
  readonly what?: string | undefined;
  readonly outcome?: Outcome | undefined;
  readonly sentence: string;
  /** What the rule asks, and why it asks. */
  readonly prose: string;
  readonly numbers: readonly { readonly name: string; readonly shown: string }[];
  readonly steps: readonly {
    readonly formula: string;
    readonly substituted: string | undefined;
    readonly notes: readonly string[];
    /** The calculator that evaluated it. */
    readonly working: string | undefined;
  }[];
  readonly sources: readonly CitedView[];
  /** Of a number somebody typed: as it was written, where, and how its writer knows it. */
  readonly typed?:
    | {
        readonly written: string | undefined;
        readonly at: string;
        readonly status: string | undefined;
        readonly source: string | undefined;
      }
    | undefined;
}

/** Which number of the screen is asked about. */
export type NumberAsked =
  /** The number of that place on a sheet of a point, of a machine, or of the speed a hand holds. */
  | { readonly is: 'point sheet'; readonly of: string; readonly sheet: string; readonly place: number }
  | { readonly is: 'machine sheet'; readonly machine: string; readonly place: number }
  | { readonly is: 'held speed'; readonly machine: string; readonly asked: SpeedAsked; readonly place: number }
  | {
      readonly is: 'judgement';
      readonly of: string;
      readonly rule: string;
      readonly target: string | undefined;
      /** Which of several judgements of the rule, by what it judges; all of them where it is left out. */
      readonly what?: string | undefined;
      /** The point as a hand holds it; as the file states it where it is left out. */
      readonly trial?: TrialAsked | undefined;
    }
  | { readonly is: 'handle'; readonly key: string; readonly trial: TrialAsked }
  /** A margin of the shortlist: of one target, or the least of all. */
  | {
      readonly is: 'candidate';
      readonly of: string;
      readonly transducer: string;
      readonly mount: string;
      readonly target: string | undefined;
    }
  | { readonly is: 'nearest'; readonly of: string; readonly trial?: TrialAsked | undefined }
  | { readonly is: 'covered'; readonly points: readonly string[] }
  | { readonly is: 'count of findings'; readonly of: string }
  | { readonly is: 'cable length'; readonly of: string }
  | { readonly is: 'speed range'; readonly machine: string }
  | { readonly is: 'finding'; readonly rule: string; readonly at: string; readonly key: string };
