import { Broken } from './refusal.ts';

/** The first kind word that stands twice in a list, found by the compiler. */
type Repeated<List, Seen = never> = List extends readonly [{ readonly kind: infer Word extends string }, ...infer Rest]
  ? Word extends Seen
    ? Word
    : Repeated<Rest, Seen | Word>
  : never;

/** A list as it is, or a sentence no list can satisfy. */
type WithoutRepeat<List> = [Repeated<List>] extends [never] ? List : { readonly kindStandsTwice: Repeated<List> };

/** A list of kinds in which each word stands once: the compiler refuses a repeat, and so does the running program. */
export function kinds<const List extends readonly { readonly kind: string }[]>(
  ...list: List & WithoutRepeat<List>
): List {
  const words = new Set<string>();
  for (const { kind } of list as List) {
    if (words.has(kind)) throw new Broken('a kind stands once in its list', { kind });
    words.add(kind);
  }
  return list as List;
}
