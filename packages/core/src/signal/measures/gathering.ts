import { type Answer, unanswered } from '../../quantity/index.ts';

/**
 * Something measured of samples that come in blocks, in one pass and in bounded memory. How a record is cut into blocks
 * changes nothing. The result may be asked for at any time, and more samples taken after it.
 */
export interface Gathering<Result> {
  take(samples: Float64Array): void;
  result(): Result;
}

/** The same of two channels that were sampled together: the blocks of a call have one length. */
export interface PairGathering<Result> {
  take(first: Float64Array, second: Float64Array): void;
  result(): Result;
}

/** What a gathering gives for samples that are all there. */
export function measured<Result>(gathering: Gathering<Result>, samples: Float64Array): Result {
  gathering.take(samples);
  return gathering.result();
}

/** The answer for a record that is too short: how many samples there are, and how many there would have to be. */
export function tooShort(samples: number, needed: number): Answer<never> {
  return unanswered([{ of: 'the record', what: `length of at least ${needed} samples (it has ${samples})` }]);
}

/** The answer for a record that does not hold what is measured. */
export function notThere(what: string): Answer<never> {
  return unanswered([{ of: 'the record', what }]);
}
