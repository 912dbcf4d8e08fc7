import type { Edit } from '@soundpost/server/protocol';
import { stringify } from 'yaml';
import { restatedEdits } from '../engine/machine/statement-edits.ts';
import { hasOrigin, noOrigin, type Origin } from '../engine/origin.ts';
import type { PointRow } from '../engine/views.ts';
import { type ColumnKey, columnCalled, type StatedColumn } from './columns.ts';

/** What was typed into cells of one row, by column. */
export type Typed = ReadonlyMap<ColumnKey, string>;

/**
 * The changes of the plant file that typed values of one point ask for, all together: a chain that begins with them is
 * put there whole, with its length unknown where nobody gave one. `origin` is how the typed values are known: what the
 * file said of the values before does not pass over to them.
 */
export function rowEdits(
  row: Pick<PointRow, 'machine' | 'name' | 'cable' | 'said'>,
  typed: Typed,
  origin: Origin = noOrigin,
): readonly Edit[] {
  const at = ['machines', row.machine, 'points', row.name];
  const placed = [...typed].flatMap(([key, text]) => {
    const { path, stated } = columnCalled(key);
    return path === undefined ? [] : [{ path, text, stated }];
  });
  const edits = ({ path, text, stated }: Placed) =>
    stated === undefined
      ? [{ path: [...at, ...path], yaml: scalar(text) }]
      : restatedEdits([...at, ...path], row.said[stated], text, origin);
  const ofChain = placed.filter(({ path }) => path[0] === 'chain');
  if (row.cable !== '' || ofChain.length === 0) {
    return placed.flatMap(edits);
  }
  const chain = Object.fromEntries(ofChain.map((each) => [each.path[1]!, entryOf(each, origin)]));
  return [
    ...placed.filter(({ path }) => path[0] !== 'chain').flatMap(edits),
    { path: [...at, 'chain'], yaml: stringify({ 'cable-length': 'unknown', ...chain }).trimEnd() },
  ];
}

interface Placed {
  readonly path: readonly string[];
  readonly text: string;
  readonly stated: StatedColumn | undefined;
}

/** A value of a chain that is begun, with its origin where it may have one. */
function entryOf({ text, stated }: Placed, { status, source }: Origin): unknown {
  if (stated === undefined || text === 'unknown' || !hasOrigin({ status, source })) return text;
  return { value: text, ...(status === '' ? {} : { status }), ...(source === '' ? {} : { source }) };
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
