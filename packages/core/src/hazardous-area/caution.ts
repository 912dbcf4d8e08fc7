/** Stands on every record and document that comes out of this room. */
export const caution =
  'This compares certificate values as they were entered, and approves nothing. The codes of the place, the certificates ' +
  'themselves and a person licensed for this practice decide; two people sign.';

/** How a comparison that passed is worded, always: what was compared stands in the sentence. */
export const passedWording = 'comparison passed for these certificate values';
export const notPassedWording = 'comparison not passed for these certificate values';
export const notProvenWording = 'not proven: a value that the comparison needs is missing';
