import { Broken, type Level } from '../quantity/index.ts';
import type { Clause } from '../source/source.ts';
import { type AnyWorking, calculate } from './working.ts';

/** Somebody else's number, and the inputs that give it. The last digit printed sets the tolerance. */
export interface Printed {
  readonly working: AnyWorking;
  readonly given: Readonly<Record<string, string>>;
  /** Output name to the number as printed, with its unit: `3.5848 Hz`. */
  readonly printed: Readonly<Record<string, string>>;
  readonly source: Clause;
  /** Where the source's own rounding of its inputs makes the last digit too strict: half-width, and why. */
  readonly looser?: { readonly relative: number; readonly because: string };
}

export function printed(definition: Printed): Printed {
  return definition;
}

/** What our working gives beside what was printed; `within` by half a unit of the last printed digit. */
export interface Compared {
  readonly output: string;
  readonly printed: number;
  readonly ours: number;
  readonly tolerance: number;
  readonly within: boolean;
}

export function compared(evidence: Printed): readonly Compared[] {
  const results = calculate(evidence.working, evidence.given).results;
  return Object.entries(evidence.printed).map(([name, text]) => {
    const result = results.find((each) => each.name === name);
    if (result === undefined) throw new Broken('printed evidence names an output of its working', { name });
    const [number = '', ...unit] = text.split(' ');
    const field = evidence.working.outputs[camelOf(name)].field;
    const one = numberOf(field.read(`1 ${unit.join(' ')}`.trim(), { decimal: 'point' }));
    const value = numberOf(field.read(text, { decimal: 'point' }));
    const ours = (result.json as { value: number }).value;
    const decimals = /\.(\d+)/.exec(number)?.[1]?.length ?? 0;
    const lastDigit = Math.abs(one) * 10 ** -decimals;
    const tolerance = Math.max(0.5 * lastDigit * (1 + 1e-6), (evidence.looser?.relative ?? 0) * Math.abs(value));
    return { output: name, printed: value, ours, tolerance, within: Math.abs(ours - value) <= tolerance };
  });
}

function numberOf(read: number | Level): number {
  return typeof read === 'number' ? read : read.value;
}

function camelOf(name: string): string {
  return name.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}
