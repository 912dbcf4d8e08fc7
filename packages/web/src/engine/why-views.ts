import type { Outcome } from './views.ts';
import type { CitedView } from './working-views.ts';

/** Why a judgement is what it is, in three depths. */
export interface WhyView {
  readonly title: string;
  readonly what: string;
  readonly outcome: Outcome;
  readonly sentence: string;
  /** What the rule asks, and why it asks. */
  readonly prose: string;
  readonly numbers: readonly { readonly name: string; readonly shown: string }[];
  readonly steps: readonly {
    readonly formula: string;
    readonly substituted: string | undefined;
    readonly notes: readonly string[];
  }[];
  readonly sources: readonly CitedView[];
}
