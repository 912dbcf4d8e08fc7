import type { Line } from './layout/line.ts';

/** 0: done; 1: a finding blocks; 2: the input cannot be read. */
export type Exit = 0 | 1 | 2;

/** What came of a command: for people, for scripts, and for the shell. */
export interface Outcome {
  readonly exit: Exit;
  readonly lines: readonly Line[];
  readonly json: unknown;
}
