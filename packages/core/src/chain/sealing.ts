import { describe, type Field, Refusal } from '../quantity/index.ts';

/** How the seal is made, from what lets water in first to what never does. */
export const sealingStates = ['not said', 'mated', 'moulded', 'continuous', 'hermetic'] as const;
export type SealingState = (typeof sealingStates)[number];

/** What keeps water and dust out of a part, as its data sheet says it. */
export interface Sealing {
  readonly written: string;
  /** The second digit of the IP code, 0 to 9; absent where no code is stated. */
  readonly water: number | undefined;
  readonly state: SealingState;
}

/** Words of data sheets for each state, looked for in this order: what is stated of the whole beats the connector. */
const wordsOf: readonly (readonly [SealingState, RegExp])[] = [
  ['hermetic', /hermetic|welded/i],
  ['continuous', /continuous|permanent|submers/i],
  ['moulded', /mould|molded|integral|potted/i],
  ['mated', /mated|connector|plug/i],
];

export function sealingOf(text: string): Sealing {
  const code = /IP\s?[0-6X]([0-9])/i.exec(text)?.[1];
  const state = wordsOf.find(([, words]) => words.test(text))?.[0] ?? 'not said';
  return { written: text, water: code === undefined ? undefined : Number(code), state };
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
