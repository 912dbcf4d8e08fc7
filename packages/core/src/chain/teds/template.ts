import type { Coding } from './coding.ts';

/** One field of a data sheet in memory: its name, how many bits it has, and how they are read. */
export interface Entry {
  readonly name: string;
  readonly bits: number;
  readonly coding: Coding;
  /** Of its numbers, as shown beside them. */
  readonly unit?: string;
  /** Where the lowest code is also what a field nobody wrote reads as. */
  readonly lowestMayBeUnwritten?: true;
}

/** Fields that follow one another; `only` where an earlier field has that code. */
export interface Section {
  readonly only?: { readonly field: string; readonly code: number };
  readonly entries: readonly Entry[];
}

/** From here on the layout is not known: behind a field whose code is another than the one given. */
export interface Edge {
  readonly behind: string;
  readonly unless: number;
  readonly notKnown: readonly string[];
}

/** A template: one file, one line in `kinds.ts`. */
export interface Template<Kind extends string = string> {
  readonly kind: Kind;
  readonly id: number;
  readonly name: string;
  readonly sections: readonly Section[];
  readonly edges: readonly Edge[];
  /** What it holds besides, at places not known here. */
  readonly notKnown: readonly string[];
}

export function template<const Kind extends string>(definition: Template<Kind>): Template<Kind> {
  return definition;
}

export function entry(name: string, bits: number, coding: Coding, unit?: string): Entry {
  return { name, bits, coding, ...(unit === undefined ? {} : { unit }) };
}

/** A field whose lowest code may be a field nobody wrote. */
export function writtenEntry(name: string, bits: number, coding: Coding, unit?: string): Entry {
  return { ...entry(name, bits, coding, unit), lowestMayBeUnwritten: true };
}
