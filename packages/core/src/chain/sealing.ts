import { describe, type Field, Refusal } from '../quantity/index.ts';

/** How the seal is made, from what lets water in first to what never does. */
export const sealingStates = ['not said', 'mated', 'moulded', 'continuous', 'hermetic'] as const;
export type SealingState = (typeof sealingStates)[number];

/** What keeps water and dust out of a part, as its data sheet says it. */
export interface Sealing {
  readonly written: string;
  /** The second digit of the IP code, 0 to 9, the highest where there are two; absent where no code is stated. */
  readonly water: number | undefined;
  /** Whether it was tested against jets: 5, 6 or 9. A test under water (7, 8) says nothing of jets. */
  readonly jets: boolean;
  readonly state: SealingState;
  /** Depth of the agreed immersion in metres, as in `IP68 (10 m, continuous)`; absent where none is said. */
  readonly depth: number | undefined;
}

/** Words of data sheets for each state, looked for in this order: what is stated of the whole beats the connector. */
const wordsOf: readonly (readonly [SealingState, RegExp])[] = [
  ['hermetic', /hermetic|welded/i],
  ['continuous', /continuous|permanent|submers/i],
  ['moulded', /mould|molded|integral|potted/i],
  ['mated', /mated|connector|plug/i],
];

export function sealingOf(text: string): Sealing {
  const digits = waterDigits(text);
  const state = wordsOf.find(([, words]) => words.test(text))?.[0] ?? 'not said';
  return {
    written: text,
    water: digits.length === 0 ? undefined : Math.max(...digits),
    jets: digits.some((digit) => digit === 5 || digit === 6 || digit === 9),
    state,
    depth: depthIn(text),
  };
}

/** Metres of water right behind a code, `IP68 (10 m, continuous)`; a length elsewhere may be that of a cable. */
function depthIn(text: string): number | undefined {
  const metres = /IP\s?[0-6X][0-9]K?\s*\(\s*(\d{1,4}(?:\.\d{1,3})?)\s?m(?![a-z0-9])/i.exec(text)?.[1];
  return metres === undefined ? undefined : Number(metres);
}

/** Second digits of every code in a text; `IP66/68` and `IP66/IP68` are two codes. */
function waterDigits(text: string): readonly number[] {
  return [...text.matchAll(/IP\s?[0-6X]([0-9])((?:\s?\/\s?(?:IP\s?)?[0-6X][0-9])*)/gi)].flatMap(([, first, more]) => [
    Number(first),
    ...[...(more ?? '').matchAll(/[0-6X]([0-9])/gi)].map(([, digit]) => Number(digit)),
  ]);
}

/** Reads `IP67 (mated)`, `IP68 (10 m, continuous)`, `IP67 integral cable`, `hermetic`. */
export function sealingField(meaning: string): Field<Sealing> {
  const expected = "an IP code with its state, such as 'IP67 (mated)' or 'IP68 (10 m, continuous)', or 'hermetic'";
  return {
    type: 'text',
    meaning,
    expected,
    example: 'IP67 (mated)',
    schema: { type: 'string', description: `${meaning} (${expected})`, maxLength: 200 },
    read: (raw) => {
      if (typeof raw !== 'string' || raw.length > 200) throw new Refusal({ read: describe(raw), expected });
      return sealingOf(raw);
    },
    show: (value) => value.written,
    json: (value) => value.written,
  };
}
