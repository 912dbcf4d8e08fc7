import type { Rank } from './protection-level.ts';

/** A way in which equipment is kept from igniting, by its letters in a marking, and the rank it reaches. */
export interface ProtectionConcept {
  readonly letters: string;
  readonly name: string;
  readonly rank: Rank;
  /** By limiting the energy of a whole circuit, so that the parts of it must be compared with each other. */
  readonly intrinsic?: true;
}

const concept = (letters: string, name: string, rank: Rank): ProtectionConcept => ({ letters, name, rank });

/** Every concept that is read in a marking. Ranks from memory of IEC 60079-0 and its parts. */
export const protectionConcepts: readonly ProtectionConcept[] = [
  { ...concept('ia', 'intrinsic safety, two faults', 'a'), intrinsic: true },
  { ...concept('ib', 'intrinsic safety, one fault', 'b'), intrinsic: true },
  { ...concept('ic', 'intrinsic safety, normal use', 'c'), intrinsic: true },
  concept('da', 'flameproof enclosure, small', 'a'),
  concept('d', 'flameproof enclosure', 'b'),
  concept('db', 'flameproof enclosure', 'b'),
  concept('dc', 'flameproof enclosure, normal use', 'c'),
  concept('e', 'increased safety', 'b'),
  concept('eb', 'increased safety', 'b'),
  concept('ec', 'increased safety, normal use', 'c'),
  concept('pxb', 'pressurised enclosure', 'b'),
  concept('pyb', 'pressurised enclosure', 'b'),
  concept('pzc', 'pressurised enclosure, normal use', 'c'),
  concept('ma', 'encapsulation, two faults', 'a'),
  concept('mb', 'encapsulation', 'b'),
  concept('mc', 'encapsulation, normal use', 'c'),
  concept('ob', 'liquid immersion', 'b'),
  concept('oc', 'liquid immersion, normal use', 'c'),
  concept('q', 'powder filling', 'b'),
  concept('qb', 'powder filling', 'b'),
  concept('nA', 'no sparks in normal use', 'c'),
  concept('nC', 'enclosed sparks in normal use', 'c'),
  concept('nR', 'restricted breathing', 'c'),
  concept('ta', 'enclosure against dust, two faults', 'a'),
  concept('tb', 'enclosure against dust', 'b'),
  concept('tc', 'enclosure against dust, normal use', 'c'),
];
