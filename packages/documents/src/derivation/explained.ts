import {
  type AnyWorking,
  type Clause,
  evaluated,
  Refusal,
  type Result,
  type Showing,
  type Stated,
  workingCalled,
} from '@soundpost/core';
import type { Derivation } from './derivation.ts';

/** `found`: `12.3 µg pk`. */
export interface NamedNumber {
  readonly name: string;
  readonly shown: string;
}

/** Where a number came from that nobody computed here: what stands in which file, and how its writer knows it. */
export interface Typed {
  /** As it was written; absent where only its value is known. */
  readonly written?: string;
  /** Where it stands: `transducer ACC-100, sensitivity`. */
  readonly at: string;
  /** `nameplate`, `assumed`; absent where the file does not say. */
  readonly status?: string;
  readonly source?: string;
}

/** One number of a screen or document told in three depths: a sentence, the numbers, the formula with them put in and whose it is. */
export interface Explained {
  readonly title: string;
  readonly sentence: string;
  readonly numbers: readonly NamedNumber[];
  readonly steps: readonly Derivation[];
  readonly sources: readonly Clause[];
  /** Of a number somebody typed. */
  readonly typed?: Typed;
}

/** Asked for only when somebody opens the number. */
export type Explain = () => Explained;

/** A number somebody typed: there is nothing to compute, but a place in a file and perhaps a source. */
export function typedNumber(
  what: string,
  of: string,
  entry: Extract<Stated<unknown>, { known: true }>,
  shown: string,
  meaning = '',
): Explained {
  const { written, status, source } = entry;
  const how =
    status === undefined && source === undefined
      ? 'the file does not say how it is known, so it is taken as it stands'
      : `known by ${[status, source].filter((each) => each !== undefined).join(', ')}`;
  return {
    title: capital(what),
    sentence: `${meaning === '' ? '' : `${capital(meaning)}. `}It was typed, not computed; ${how}.`,
    numbers: [{ name: what, shown }],
    steps: [],
    sources: [],
    typed: {
      ...(written === '' ? {} : { written }),
      at: `${of}, ${what}`,
      ...(status === undefined ? {} : { status }),
      ...(source === undefined ? {} : { source }),
    },
  };
}

/** A formula with its numbers put in: `left = right = result`. */
export function step(formula: string, right: string, result: string, ...notes: readonly string[]): Derivation {
  const left = formula.slice(0, formula.indexOf('=')).trim();
  return {
    formula,
    substituted: `${left} = ${right} = ${result}`,
    ...(notes.length === 0 ? {} : { notes }),
  };
}

/**
 * The steps by which a working comes to one of its results, each with its numbers; nothing where it refuses the inputs,
 * or would show another number than the one that stands there.
 */
export function workedSteps(
  name: string,
  values: Readonly<Record<string, unknown>>,
  wanted: string,
  showing: Showing,
  standsThere?: string,
): readonly Derivation[] {
  const definition: AnyWorking = workingCalled(name);
  const results = resultsOf(definition, values, showing);
  const result = results.find((each) => each.name === wanted);
  if (result === undefined || (standsThere !== undefined && result.shown !== standsThere)) return [];
  return [...leading(results, result), result].map(({ formula, substituted, shown, name: output }) => ({
    formula,
    substituted: `${substituted} = ${shown}`,
    worked: { working: name, output, values },
  }));
}

function resultsOf(
  definition: AnyWorking,
  values: Readonly<Record<string, unknown>>,
  showing: Showing,
): readonly Result[] {
  try {
    return evaluated(definition, values, showing);
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}

/** The results before it whose letters its formula, or that of another such one, holds. */
function leading(results: readonly Result[], last: Result): readonly Result[] {
  const wanted = new Set<string>();
  const want = (formula: string) => {
    for (const letter of formula.slice(formula.indexOf('=')).match(/[\p{L}Δ][\p{L}\p{Nd}_Δ₀-₉]*/gu) ?? [])
      wanted.add(letter);
  };
  want(last.formula);
  // Backwards, because a result before may lean on one before it.
  const kept: Result[] = [];
  for (const each of results.slice(0, results.indexOf(last)).reverse()) {
    if (!wanted.has(each.symbol)) continue;
    want(each.formula);
    kept.unshift(each);
  }
  return kept;
}

export function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
