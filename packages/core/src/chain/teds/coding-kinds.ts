import { kinds, Refusal } from '../../quantity/index.ts';
import {
  type Coding,
  characters,
  constantRelative,
  constantStep,
  counted,
  daysSince1998,
  fiveBitLetters,
  oneOf,
  singlePrecision,
} from './coding.ts';

/** What a transcribed field may state of its coding beside its name. */
export interface CodingTerms {
  /** Value of code 0. */
  readonly start?: number;
  /** From one code to the next. */
  readonly step?: number;
  /** The half of a step: of the value itself where the resolution is relative. */
  readonly tolerance?: number;
  /** What the codes from 0 stand for. */
  readonly words?: readonly string[];
}

export type CodingTerm = keyof CodingTerms;

/** A coding as a transcribed layout names it. */
export interface CodingKind<Kind extends string = string> {
  readonly kind: Kind;
  readonly meaning: string;
  /** Each line: one of these terms must be stated, and only one. */
  readonly asks: readonly (readonly CodingTerm[])[];
  /** How many bits it may have; a whole number of 53 bits is the longest that is exact here. */
  readonly bits: { readonly least: number; readonly most: number; readonly whole: number };
  /** The terms are those asked for. Throws Refusal where they make no coding. */
  of(terms: CodingTerms, bits: number): Coding;
}

const codingKind = <const Kind extends string>(definition: CodingKind<Kind>): CodingKind<Kind> => definition;
const anyBits = { least: 1, most: 53, whole: 1 } as const;

function aboveZero(name: CodingTerm, value: number): number {
  if (value > 0) return value;
  throw new Refusal({ read: String(value), expected: `a '${name}' above zero` });
}

/** Every coding a transcribed field may have. */
export const codingKinds = kinds(
  codingKind({
    kind: 'unsigned',
    meaning: 'the code itself, a whole number',
    asks: [],
    bits: anyBits,
    of: () => counted(),
  }),
  codingKind({
    kind: 'enumeration',
    meaning: 'one of a list of words, the first as code 0',
    asks: [['words']],
    bits: { least: 1, most: 16, whole: 1 },
    of: ({ words = [] }, bits) => {
      const twice = words.find((word, index) => words.indexOf(word) < index);
      if (twice !== undefined) throw new Refusal({ read: twice, expected: 'each word once' });
      if (words.length > 2 ** bits) {
        throw new Refusal({ read: `${words.length} words`, expected: `at most ${2 ** bits}, for ${bits} bits` });
      }
      return oneOf(words);
    },
  }),
  codingKind({
    kind: 'constant-resolution',
    meaning: 'x = start + step · code, with step = 2 · tolerance; all ones states nothing',
    asks: [['start'], ['step', 'tolerance']],
    bits: { least: 2, most: 32, whole: 1 },
    of: ({ start = 0, step, tolerance }) =>
      step === undefined
        ? constantStep(start, 2 * aboveZero('tolerance', tolerance ?? 0))
        : constantStep(start, aboveZero('step', step)),
  }),
  codingKind({
    kind: 'constant-relative-resolution',
    meaning: 'x = start · (1 + 2 · tolerance)^code; all ones states nothing',
    asks: [['start'], ['tolerance']],
    bits: { least: 2, most: 32, whole: 1 },
    of: ({ start = 0, tolerance = 0 }, bits) => {
      const ratio = 1 + 2 * aboveZero('tolerance', tolerance);
      const largest = aboveZero('start', start) * ratio ** (2 ** bits - 2);
      if (ratio > 1 && Number.isFinite(largest)) return constantRelative(start, tolerance);
      throw new Refusal({
        read: `tolerance ${tolerance} over ${bits} bits`,
        expected: 'a range that ends at a number: its last code would stand for none',
      });
    },
  }),
  codingKind({
    kind: 'date',
    meaning: 'days since 1998-01-01; all ones states nothing',
    asks: [],
    bits: { least: 16, most: 16, whole: 1 },
    of: () => daysSince1998,
  }),
  codingKind({
    kind: 'single',
    meaning: 'a number of single precision (IEEE 754)',
    asks: [],
    bits: { least: 32, most: 32, whole: 1 },
    of: () => singlePrecision,
  }),
  codingKind({
    kind: 'characters-5',
    meaning: 'capital letters of five bits, A as 1',
    asks: [],
    bits: { least: 5, most: 50, whole: 5 },
    of: () => fiveBitLetters,
  }),
  codingKind({
    kind: 'characters-7',
    meaning: 'ASCII characters of seven bits, zeros behind the last',
    asks: [],
    bits: { least: 7, most: 49, whole: 7 },
    of: () => characters(7),
  }),
  codingKind({
    kind: 'characters-8',
    meaning: 'ASCII characters of eight bits, zeros behind the last',
    asks: [],
    bits: { least: 8, most: 48, whole: 8 },
    of: () => characters(8),
  }),
);

export type CodingKindName = (typeof codingKinds)[number]['kind'];
