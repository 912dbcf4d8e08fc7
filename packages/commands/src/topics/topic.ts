import type { Line } from '../layout/line.ts';
import type { Manner } from '../manner.ts';

/** Something that can be explained: a rule, a kind, a source, a working, a quantity, a table of limits. */
export interface Topic {
  /** `rule`, `working`, `source`, `transducer kind`: what it is, in a word or two. */
  readonly is: string;
  readonly name: string;
  readonly title: string;
  lines(manner: Manner): readonly Line[];
  readonly json: unknown;
}
