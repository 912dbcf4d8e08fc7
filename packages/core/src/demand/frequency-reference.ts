import {
  type Answer,
  answer,
  describe,
  type Field,
  parseQuantity,
  Refusal,
  showQuantity,
  unanswered,
} from '../quantity/index.ts';

/** A frequency as the engineer names it: a number, or so many times a line of the machine in a named state. */
export type FrequencyReference =
  | { readonly is: 'number'; readonly value: number }
  | { readonly is: 'line'; readonly harmonic: number; readonly line: string; readonly state: string };

const expected = "a frequency ('523 Hz') or a line of the machine ('3 x pump-drive-end/inner-ring at highest')";
const pattern = /^\s*(?:(\d+(?:\.\d+)?)\s*[x×*]\s*)?([a-z][\w./-]*)\s+at\s+([a-z][\w-]*)\s*$/i;

export const frequencyReferenceField: Field<FrequencyReference> = {
  type: 'text',
  meaning: 'A frequency, or a line of the machine at one of its operating states',
  expected,
  example: '3 x pump-drive-end/inner-ring at highest',
  schema: { type: 'string', description: expected },
  read: (raw, writing) => {
    if (typeof raw !== 'string') throw new Refusal({ read: describe(raw), expected });
    const named = pattern.exec(raw);
    if (named !== null) {
      return { is: 'line', harmonic: Number(named[1] ?? '1'), line: named[2]!, state: named[3]! };
    }
    try {
      return { is: 'number', value: parseQuantity(raw, 'frequency', writing) };
    } catch (error) {
      if (error instanceof Refusal) throw new Refusal({ ...error.reason, expected });
      throw error;
    }
  },
  show: (value) => showReference(value),
  json: (value) => (value.is === 'number' ? { value: value.value, unit: 'Hz', shown: showReference(value) } : value),
};

export function showReference(reference: FrequencyReference): string {
  if (reference.is === 'number') return showQuantity('frequency', reference.value);
  const times = reference.harmonic === 1 ? '' : `${reference.harmonic} × `;
  return `${times}${reference.line} at ${reference.state}`;
}

/** Looks a line of the machine up by name and state; unknown where the machine does not have it or cannot tell. */
export type LineLookup = (line: string, state: string) => Answer<number>;

/** Below this, once in eleven days, a machine stands still for every purpose here. */
const atRest = 1e-6;

/** The frequency in hertz. What stands still has no line: at zero it is asked about, never computed with. */
export function frequencyOf(reference: FrequencyReference, lookup: LineLookup): Answer<number> {
  const base = reference.is === 'number' ? answer(reference.value) : lookup(reference.line, reference.state);
  if (!base.known) return base;
  const frequency = base.value * (reference.is === 'number' ? 1 : reference.harmonic);
  if (frequency >= atRest) return answer(frequency);
  return unanswered([{ of: showReference(reference), what: 'frequency (as stated it is that of a machine at rest)' }]);
}
