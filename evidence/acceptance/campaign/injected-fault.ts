import type { BesideRecords, MeasuredRecord } from '../../../packages/core/src/index.ts';
import type { Making } from './records.ts';

/** A size of a fault, as the page says it and as the generator takes it. */
export interface InjectedSize {
  readonly said: string;
  readonly size: number;
}

/** A fault that is put into healthy records at several sizes. */
export interface InjectedFault {
  readonly fault: string;
  /** The check that is to find it. */
  readonly check: string;
  /** Which of several results of that check. */
  readonly of?: string;
  /** What its size means. */
  readonly sized: string;
  readonly sizes: readonly InjectedSize[];
  /** What its named cause says where it is the right one. */
  readonly cause: RegExp;
  /** Places by turns. */
  readonly places: readonly string[];
  make(making: Making, size: number): { readonly records: readonly MeasuredRecord[]; readonly beside?: BesideRecords };
}

export const sizes = (...each: readonly (readonly [string, number])[]): readonly InjectedSize[] =>
  each.map(([said, size]) => ({ said, size }));

export const times = (...each: readonly number[]): readonly InjectedSize[] =>
  each.map((size) => ({ said: `${size} times`, size }));

/** Casing transducers with constant-current electronics. */
export const biased = ['P-301/iepe-portable', 'P-301/iepe-online', 'P-301/charge', 'P-301/velocity-piezo'];
/** Those that stand on their own resonance. */
export const resonant = ['P-301/iepe-online', 'P-301/velocity-piezo'];
export const casing = [...biased, 'P-301/velocity-coil', 'SC-7/exciter-housing', 'T-14/nacelle'];
export const accelerometers = ['P-301/iepe-portable', 'P-301/iepe-online', 'P-301/charge'];
export const loops = ['P-301/loop', 'P-301/loop-peak'];
export const pair = ['K-11/bearing-1'];
