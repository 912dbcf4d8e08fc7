import type { Manner } from './manner.ts';
import type { Outcome } from './outcome.ts';
import type { Surroundings } from './surroundings.ts';

/** Something typed after the name of a command, in its place. */
export interface Argument {
  /** As it stands in help: `PLANT`. */
  readonly placeholder: string;
  readonly meaning: string;
  readonly optional?: true;
  /** All that is left of the line. */
  readonly many?: true;
}

export function argument(placeholder: string, meaning: string): Argument {
  return { placeholder, meaning };
}

export function optionalArgument(placeholder: string, meaning: string): Argument & { readonly optional: true } {
  return { placeholder, meaning, optional: true };
}

export function manyArguments(placeholder: string, meaning: string): Argument & { readonly many: true } {
  return { placeholder, meaning, many: true };
}

/** Something typed with two dashes before it. */
export type Flag =
  | { readonly is: 'switch'; readonly meaning: string }
  | { readonly is: 'text'; readonly placeholder: string; readonly meaning: string }
  /** Names with commas between them. */
  | { readonly is: 'names'; readonly placeholder: string; readonly meaning: string };

export function switchFlag(meaning: string) {
  return { is: 'switch', meaning } as const;
}

export function textFlag(placeholder: string, meaning: string) {
  return { is: 'text', placeholder, meaning } as const;
}

export function namesFlag(placeholder: string, meaning: string) {
  return { is: 'names', placeholder, meaning } as const;
}

export type Arguments = Readonly<Record<string, Argument>>;
export type Flags = Readonly<Record<string, Flag>>;

/** What was typed, by the names of the definition. */
export type Given<A extends Arguments, F extends Flags> = {
  readonly [K in keyof A]: A[K] extends { readonly many: true }
    ? readonly string[]
    : A[K] extends { readonly optional: true }
      ? string | undefined
      : string;
} & {
  readonly [K in keyof F]: F[K] extends { readonly is: 'switch' }
    ? boolean
    : F[K] extends { readonly is: 'names' }
      ? readonly string[] | undefined
      : string | undefined;
};

/** When a command may be given: in words, and what stands in its way here. */
export interface Allowance {
  readonly words: string;
  hindrance(surroundings: Surroundings): Promise<string | undefined>;
}

export const always: Allowance = { words: 'always', hindrance: async () => undefined };

/** One thing the tool can be told to do; the command line, the server and the screens offer the same. */
export interface Command<A extends Arguments = Arguments, F extends Flags = Flags> {
  readonly name: string;
  /** One line, without a full stop. */
  readonly summary: string;
  /** What it does and what it prints, in a few sentences. */
  readonly description: string;
  readonly arguments: A;
  readonly flags: F;
  /** Lines that can be typed as they stand. */
  readonly examples: readonly string[];
  readonly whenAllowed: Allowance;
  perform(surroundings: Surroundings, given: Given<A, F>, manner: Manner): Promise<Outcome>;
}

export function command<const A extends Arguments, const F extends Flags>(definition: Command<A, F>): Command<A, F> {
  return definition;
}

/** Any command, its types forgotten. */
// biome-ignore lint/suspicious/noExplicitAny: a list of commands of unlike arguments has no other common type
export type AnyCommand = Command<any, any>;
