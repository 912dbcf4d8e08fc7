/** A revision as it may stand in the name of a folder anywhere. */
export function revisionFolder(revision: string): string {
  return `revision-${revision.replace(/[^A-Za-z0-9_-]+/g, '-').slice(0, 40) || 'unnamed'}`;
}

/** The revision after one: `A` → `B`, `Z` → `AA`, `3` → `4`, `P2` → `P3`, `B.09` → `B.10`. */
export function nextRevision(revision: string): string {
  const [, before = '', last = ''] = /^(.*?)(\d+|[A-Za-z]+)?$/s.exec(revision)!;
  if (last === '') return `${before}2`;
  if (/\d/.test(last)) return `${before}${String(BigInt(last) + 1n).padStart(last.length, '0')}`;
  return `${before}${nextLetters(last)}`;
}

function nextLetters(letters: string): string {
  const last = letters.at(-1)!;
  const rest = letters.slice(0, -1);
  if (last !== 'Z' && last !== 'z') return `${rest}${String.fromCharCode(last.charCodeAt(0) + 1)}`;
  const first = last === 'Z' ? 'A' : 'a';
  return `${rest === '' ? first : nextLetters(rest)}${first}`;
}
