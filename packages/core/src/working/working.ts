import type { Finding } from '../finding/finding.ts';
import {
  type Field,
  type Fields,
  fieldOf,
  isOptional,
  kebab,
  nearest,
  type Optional,
  Refusal,
  type Showing,
} from '../quantity/index.ts';
import type { Writing } from '../quantity/parse.ts';
import { type Clause, showClause } from '../source/source.ts';

/** A result of a working: its field, and the formula that gives it. */
export interface Output<T> {
  readonly field: Field<T>;
  readonly formula: string;
  /** Left out of the answer where the inputs do not give it. */
  readonly optional?: true;
}

export function output<T>(field: Field<T>, formula: string): Output<T> {
  return { field, formula };
}

/** A result that only some inputs give: rotor-bar pass needs the bar count. */
export function optionalOutput<T>(field: Field<T>, formula: string): Output<T> & { readonly optional: true } {
  return { field, formula, optional: true };
}

export type Outputs = Readonly<Record<string, Output<unknown>>>;

type InputValues<I extends Fields> = {
  readonly [K in keyof I as I[K] extends Optional<unknown> ? never : K]: I[K] extends Field<infer T> ? T : never;
} & {
  readonly [K in keyof I as I[K] extends Optional<unknown> ? K : never]: I[K] extends Optional<infer T>
    ? T | undefined
    : never;
};

type OutputValues<O extends Outputs> = {
  readonly [K in keyof O]: O[K] extends { readonly optional: true }
    ? O[K] extends Output<infer T>
      ? T | undefined
      : never
    : O[K] extends Output<infer T>
      ? T
      : never;
};

/** One formula of the trade, defined once: the calculator, the documentation and the screens come from it. */
export interface Working<I extends Fields = Fields, O extends Outputs = Outputs> {
  readonly name: string;
  readonly title: string;
  readonly inputs: I;
  readonly outputs: O;
  /** Where the formula holds, and what it leaves out. */
  readonly holds: string;
  readonly sources: readonly Clause[];
  evaluate(inputs: InputValues<I>): OutputValues<O>;
  /** What is doubtful about these inputs. */
  doubts?(inputs: InputValues<I>): readonly Finding[];
  /** An example that can be run as it stands. */
  readonly example: Readonly<Record<string, string>>;
}

export function working<I extends Fields, O extends Outputs>(definition: Working<I, O>): Working<I, O> {
  return definition;
}

/** Any working, its types forgotten: for lists, calculators and pages. */
// biome-ignore lint/suspicious/noExplicitAny: a list of workings of unlike inputs has no other common type
export type AnyWorking = Working<any, any>;

/** One result of a calculation, ready to show or to hand to a script. */
export interface Result {
  readonly name: string;
  readonly symbol: string;
  readonly shown: string;
  readonly formula: string;
  /** The formula with the numbers put in. */
  readonly substituted: string;
  readonly json: unknown;
}

export interface Calculation {
  readonly working: string;
  readonly title: string;
  readonly inputs: Readonly<
    Record<string, { readonly written: string; readonly json: unknown; readonly shown: string }>
  >;
  readonly results: readonly Result[];
  readonly holds: string;
  readonly sources: readonly string[];
  readonly findings: readonly Finding[];
}

/** Reads the inputs as typed (`elements=9`), evaluates, and explains. Throws Refusal, naming the input. */
export function calculate(
  definition: AnyWorking,
  typed: Readonly<Record<string, unknown>>,
  writing: Writing = { decimal: 'point' },
  showing: Showing = {},
): Calculation {
  const fields = definition.inputs as Fields;
  const names = Object.keys(fields).map(kebab);
  const stranger = Object.keys(typed).find((key) => !names.includes(key));
  if (stranger !== undefined) {
    const near = nearest(stranger, names);
    throw new Refusal({
      read: stranger,
      expected: `an input of '${definition.name}': ${names.join(', ')}`,
      ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
    });
  }
  const values: Record<string, unknown> = {};
  const inputs: Record<string, { written: string; json: unknown; shown: string }> = {};
  for (const [key, entry] of Object.entries(fields)) {
    const field = fieldOf(entry);
    const text = typed[kebab(key)];
    if (text === undefined) {
      if (isOptional(entry)) continue;
      throw new Refusal({
        read: '',
        expected: `'${kebab(key)}': ${field.meaning} (${field.expected}); for example ${kebab(key)}="${field.example}"`,
      });
    }
    values[key] = readInput(field, kebab(key), text, writing);
    inputs[kebab(key)] = {
      written: typeof text === 'string' ? text : field.show(values[key]),
      json: field.json(values[key]),
      shown: field.show(values[key], showing),
    };
  }
  return {
    working: definition.name,
    title: definition.title,
    inputs,
    results: evaluated(definition, values, showing),
    holds: definition.holds,
    sources: definition.sources.map(showClause),
    findings: definition.doubts?.(values) ?? [],
  };
}

function readInput(field: Field<unknown>, name: string, text: unknown, writing: Writing): unknown {
  try {
    return field.read(text, writing);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal({ ...error.reason, read: `${name}=${error.reason.read}` });
  }
}

/** The results for inputs that are known already, each with its formula and the numbers put in. Throws Refusal as evaluate does. */
export function evaluated(
  definition: AnyWorking,
  values: Readonly<Record<string, unknown>>,
  showing: Showing = {},
): readonly Result[] {
  const outputs = definition.evaluate(values) as Record<string, unknown>;
  const letters = new Map<string, string>();
  for (const [key, value] of Object.entries(values)) {
    if (value === undefined) continue;
    const field = fieldOf((definition.inputs as Fields)[key]!);
    letters.set(field.symbol ?? key, field.show(value, showing));
  }
  const results: Result[] = [];
  for (const [key, entry] of Object.entries(definition.outputs as Outputs)) {
    const value = outputs[key];
    if (value === undefined) continue;
    const shown = entry.field.show(value, showing);
    const symbol = entry.field.symbol ?? key;
    results.push({
      name: kebab(key),
      symbol,
      shown,
      formula: entry.formula,
      substituted: substituted(entry.formula, letters),
      json: entry.field.json(value),
    });
    letters.set(symbol, shown);
  }
  return results;
}

/** Puts the numbers in place of the letters on the right of the equals sign; a letter is whole, so `f` leaves `f_r` alone. */
export function substituted(formula: string, letters: ReadonlyMap<string, string>): string {
  const equals = formula.indexOf('=');
  const left = equals < 0 ? '' : formula.slice(0, equals + 1);
  const right = equals < 0 ? formula : formula.slice(equals + 1);
  const replaced = right.replace(/([\p{L}Δ][\p{L}\p{Nd}_Δ₀-₉]*)([\^²³]?)/gu, (whole, word: string, power: string) => {
    const value = letters.get(word);
    if (value === undefined) return whole;
    // The power is of the whole value, unit and all.
    return power === '' ? value : `(${value})${power}`;
  });
  return left + replaced;
}

/** The machine form that scripts may lean on; described in docs/json.md. */
export function calculationJson(calculation: Calculation): unknown {
  return {
    working: calculation.working,
    inputs: Object.fromEntries(
      Object.entries(calculation.inputs).map(([name, input]) => [name, { written: input.written, value: input.json }]),
    ),
    outputs: Object.fromEntries(calculation.results.map((result) => [result.name, result.json])),
    formula: calculation.results.map((result) => result.formula).join('; '),
    substituted: calculation.results.map((result) => result.substituted),
    holds: calculation.holds,
    sources: calculation.sources,
    findings: calculation.findings,
  };
}
