import { Broken } from '@soundpost/core';
import type { ListEdit } from './scaffold.ts';

/** The widest line the formatter leaves on one line. */
const lineWidth = 120;

/** One import and one entry more, as the formatter would write them. */
export function listedIn(path: string, list: string, entry: string, from: string): ListEdit {
  return { path, edited: (text) => withEntry(withImport(text, entry, from, path), list, entry, path) };
}

/** One `export * from` more, in the order of the others. */
export function exportedFrom(path: string, from: string): ListEdit {
  return {
    path,
    edited: (text) => {
      const lines = text.split('\n');
      const line = `export * from '${from}';`;
      const first = lines.findIndex((each) => each.startsWith('export * from'));
      const after = lines.findIndex(
        (each, index) => index >= first && !(each.startsWith('export ') && comesBefore(specifier(each), from)),
      );
      lines.splice(after, 0, line);
      return lines.join('\n');
    },
  };
}

/** As the formatter sorts paths: by letters, and numbers by their size. */
const comesBefore = (a: string, b: string) => a.localeCompare(b, 'en', { numeric: true }) < 0;

/** One line more in a record that has one for every kind: what cannot live in the core, such as a drawing symbol. */
export function keyedIn(path: string, record: string, key: string, value: string): ListEdit {
  return {
    path,
    edited: (text) => {
      const lines = text.split('\n');
      const start = lines.findIndex((each) => each.startsWith(`const ${record}: `));
      const end = lines.findIndex((each, index) => index > start && each === '};');
      if (start < 0 || end < 0) throw new Broken('the record stands in its file', { record, path });
      lines.splice(end, 0, `  ${/^[a-z]+$/.test(key) ? key : `'${key}'`}: ${value},`);
      return lines.join('\n');
    },
  };
}

function withImport(text: string, entry: string, from: string, path: string): string {
  const lines = text.split('\n');
  const isRelative = (line: string) => line.startsWith('import ') && specifier(line).startsWith('./');
  const at = lines.findIndex((line) => isRelative(line) && comesBefore(from, specifier(line)));
  const last = lines.findLastIndex((line) => line.startsWith('import '));
  if (last < 0) throw new Broken('a list of the house imports its entries', { path });
  lines.splice(at < 0 ? last + 1 : at, 0, `import { ${entry} } from '${from}';`);
  return lines.join('\n');
}

function specifier(line: string): string {
  return /from '([^']+)'/.exec(line)?.[1] ?? '';
}

/** `name = kinds(a, b);` or `name: T = [a, b];` with one entry more at its end. */
function withEntry(text: string, list: string, entry: string, path: string): string {
  const pattern = new RegExp(`(export const ${list}\\b[^=]*= (?:\\w+\\(|\\[))([^)\\]]*?)(,?\\s*)([)\\]])`);
  const found = pattern.exec(text);
  if (found === null) throw new Broken('the list stands in its file', { list, path });
  const [whole, head, inside, , close] = found;
  const entries = [...inside!.split(',').map((each) => each.trim()), entry].filter((each) => each !== '');
  const inOneLine = `${head}${entries.join(', ')}${close}`;
  const written =
    inOneLine.length + 1 <= lineWidth && !whole.includes('\n')
      ? inOneLine
      : `${head}\n${entries.map((each) => `  ${each},`).join('\n')}\n${close}`;
  return text.replace(whole, written);
}
