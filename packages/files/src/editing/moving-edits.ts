import { isSeq } from 'yaml';
import { applyEdits, yamlAt } from './apply-edits.ts';
import type { Edit } from './edit.ts';
import { latelyRead } from './lately-read.ts';
import {
  type Entry,
  endOf,
  entriesOf,
  isFlow,
  keepsBlankLines,
  lineEnd,
  lineStart,
  nextLine,
  type YamlSource,
} from './yaml-source.ts';
import { slotsAlong } from './yaml-splice.ts';

/**
 * What brings an entry of a mapping or list so many places on, back where they are below zero, with the comments that
 * stand above it: all lines of the entries stay as they are, in another order. Nothing where there is no
 * such place, and where a text marked `|+` ends an entry: to that the blank lines behind it belong.
 */
export function movingEdits(text: string, path: Edit['path'], by: number): readonly Edit[] {
  const home = path.slice(0, -1);
  const source = latelyRead(text);
  const slot = slotsAlong(source, home)[home.length];
  const entries = entriesOf(slot?.node);
  const from = entries.findIndex((each) => String(each.key) === String(path.at(-1)));
  const to = from + by;
  if (slot === undefined || from < 0 || to < 0 || to >= entries.length || by === 0) return [];
  if (entries.some((each) => keepsBlankLines(text, each.node))) return [];
  const order = entries.map((_, index) => index);
  order.splice(to, 0, ...order.splice(from, 1));
  if (isFlow(slot.node)) {
    const pieces = order.map((index) => text.slice(entries[index]!.start, entryEnd(text, entries[index]!)));
    const own = isSeq(slot.node) ? `[${pieces.join(', ')}]` : `{ ${pieces.join(', ')} }`;
    return [{ path: home, yaml: own }];
  }
  const whole = reordered(source, slot.mark ?? 0, entries, order);
  // A comment above the first entry stands before the collection itself: what holds the collection is put there anew.
  const around = home.slice(0, -1);
  const edit: Edit = { path: around, yaml: yamlAt(whole, around) };
  return applyEdits(text, [edit]).text === whole ? [edit] : [{ path: [], yaml: whole }];
}

/** The lines of each entry, those above it that belong to none before with it, in another order. */
function reordered(source: YamlSource, mark: number, entries: readonly Entry[], order: readonly number[]): string {
  const { text, lineBreak } = source;
  const { start } = entries[0]!;
  const ends = entries.map((each) => lineEnd(text, entryEnd(text, each)));
  // Behind the dash of another list a line is shared: there only the entries themselves change their places.
  if (text.slice(lineStart(text, start), start).replace('\ufeff', '').trim() !== '') {
    const gaps = entries.map((each, index) => (index === 0 ? '' : text.slice(ends[index - 1], each.start)));
    const own = order.map((which, index) => gaps[index] + text.slice(entries[which]!.start, ends[which]));
    return text.slice(0, start) + own.join('') + text.slice(ends.at(-1));
  }
  const first = mark === 0 ? lineStart(text, start) : nextLine(text, lineEnd(text, mark));
  const starts = entries.map((_, index) => (index === 0 ? first : nextLine(text, ends[index - 1]!)));
  const pieces = order.map((index) => text.slice(starts[index], ends[index]));
  return text.slice(0, first) + pieces.join(lineBreak) + text.slice(ends.at(-1));
}

function entryEnd(text: string, { node, mark, keyEnd }: Entry): number {
  return node === undefined ? (mark ?? keyEnd) : endOf(text, node);
}
