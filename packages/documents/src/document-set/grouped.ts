/** Those with the same key together, in the order of the first of each. */
export function grouped<T>(all: readonly T[], key: (one: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const each of all) {
    const before = groups.get(key(each));
    if (before === undefined) groups.set(key(each), [each]);
    else before.push(each);
  }
  return [...groups.values()];
}
