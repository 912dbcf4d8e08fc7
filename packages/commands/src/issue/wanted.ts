import { nearest, Refusal } from '@soundpost/core';

/** Those of a list somebody asked for by name, in the order of the list; all of it where nobody asked. */
export function namesFrom<T>(
  what: string,
  all: readonly T[],
  name: (one: T) => string,
  asked: readonly string[] | undefined,
): readonly T[] {
  if (asked === undefined) return all;
  const names = all.map(name);
  for (const each of asked) oneFrom(what, names, each);
  return all.filter((each) => asked.includes(name(each)));
}

/** A word of a list. Throws Refusal with the one probably meant. */
export function oneFrom<Word extends string>(what: string, all: readonly Word[], asked: string): Word {
  const found = all.find((each) => each === asked);
  if (found !== undefined) return found;
  const near = nearest(asked, all);
  throw new Refusal({
    read: `${what}: ${asked}`,
    expected: all.join(', '),
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}
