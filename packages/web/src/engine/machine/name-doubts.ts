import { fixed } from '@soundpost/core';

const longest = 80;

/** Why a machine or a point cannot be called that. */
export function entryNameDoubt(name: string, taken: readonly string[], what: string): string | undefined {
  const own = name.trim();
  if (own === '' || own.length > longest || own.includes('/')) {
    return `A ${what} needs a name of at most ${longest} characters, without '/'.`;
  }
  return taken.includes(own) ? `There is a ${what} '${own}' already.` : undefined;
}

/** Why something whose lines targets name cannot be called that: `pump/1x at duty`. */
export function lineNameDoubt(name: string, taken: readonly string[], what: string): string | undefined {
  const own = name.trim();
  if (!/^[a-z][\w.-]*$/i.test(own) || own.length > longest) {
    return `A name of this ${what} begins with a letter and has letters, digits, '-', '_' and '.', so that targets can speak of it: pump-drive-end.`;
  }
  if (own === fixed) return `'${fixed}' stands for what does not turn.`;
  return taken.includes(own) ? `There is a ${what} '${own}' already.` : undefined;
}
