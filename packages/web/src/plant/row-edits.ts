import type { Edit } from '@soundpost/server/protocol';
import { stringify } from 'yaml';
import type { PointRow } from '../engine/views.ts';
import { type ColumnKey, columnCalled } from './columns.ts';

/** What was typed into cells of one row, by column. */
export type Typed = ReadonlyMap<ColumnKey, string>;

/**
 * The changes of the plant file that typed values of one point ask for, all together: a chain that begins with them is
 * put there whole, with its length unknown where nobody gave one.
 */
export function rowEdits(row: Pick<PointRow, 'machine' | 'name' | 'cable'>, typed: Typed): readonly Edit[] {
  const at = ['machines', row.machine, 'points', row.name];
  const placed = [...typed].flatMap(([key, text]) => {
    const { path } = columnCalled(key);
    return path === undefined ? [] : [{ path, text }];
  });
  const ofChain = placed.filter(({ path }) => path[0] === 'chain');
  if (row.cable !== '' || ofChain.length === 0) {
    return placed.map(({ path, text }) => ({ path: [...at, ...path], yaml: scalar(text) }));
  }
  const chain = Object.fromEntries(ofChain.map(({ path, text }) => [path[1]!, text]));
  return [
    ...placed
      .filter(({ path }) => path[0] !== 'chain')
      .map(({ path, text }) => ({ path: [...at, ...path], yaml: scalar(text) })),
    { path: [...at, 'chain'], yaml: stringify({ 'cable-length': 'unknown', ...chain }).trimEnd() },
  ];
}

/** A text as it may stand behind a key; what only looks like a number is kept a text, so that its reader can ask for a unit. */
function scalar(text: string): string {
  return stringify(text, { lineWidth: 0 }).trim();
}

/** What the reader of the file said, without the place in the file: the place is the cell. */
export function wordsAtCell(message: string): string {
  const said = message
    .split('\n\n')
    .slice(0, 3)
    .map((each) =>
      each
        .split('\n')[0]!
        .replace(/^.*?:\d+:\d+: /, '')
        .replace(/^.*?: (?=read )/, ''),
    );
  return [...new Set(said)].map((each) => each.replace(/^./u, (first) => first.toUpperCase())).join(' ');
}

/** What a chain that begins with typed values still waits for; undefined where it can be tried. */
export function chainWaits(row: Pick<PointRow, 'cable'>, typed: Typed): string | undefined {
  const begun = [...typed.keys()].some((key) => columnCalled(key).path?.[0] === 'chain');
  const lacks = (['cable', 'input'] as const).filter((key) => (typed.get(key) ?? '') === '');
  if (row.cable !== '' || !begun || lacks.length === 0) return undefined;
  return `Kept until the chain has its ${lacks.join(' and its ')} too: no chain is without them.`;
}
