import { Broken, type Fields, type Sheet } from '../quantity/index.ts';
import type { Clause } from '../source/source.ts';

/** What every kind of part has: a word, a name, a data sheet that drives files, forms and help, and its sources. */
export interface PartKind<Kind extends string = string, F extends Fields = Fields> {
  readonly kind: Kind;
  readonly name: string;
  readonly dataSheet: F;
  readonly sources: readonly Clause[];
}

/** A part as it stands in a catalogue: its kind, its name there, its filled-in data sheet. */
export interface Part<Kind extends PartKind = PartKind> {
  readonly kind: Kind['kind'];
  readonly name: string;
  readonly sheet: Sheet<Kind['dataSheet']>;
}

export function kindCalled<K extends { readonly kind: string }>(list: readonly K[], word: string): K {
  const found = list.find((each) => each.kind === word);
  if (found === undefined) throw new Broken('a part is of a kind in the list', { word });
  return found;
}
