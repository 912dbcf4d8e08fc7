import { Refusal } from '@soundpost/core';
import { isMap, isSeq, type Node } from 'yaml';
import type { Edit } from './edit.ts';
import { flowText, indented, keyText, oneLine, type YamlFragment, yamlFragment } from './yaml-fragment.ts';
import {
  blockEndOf,
  column,
  type Entry,
  endOf,
  entriesOf,
  isBlockCollection,
  isFlow,
  keepsBlankLines,
  lineEnd,
  lineStart,
  nextLine,
  rootOf,
  type YamlSource,
  yamlSource,
} from './yaml-source.ts';

type Path = Edit['path'];

/** A place for a value: behind a key or a dash, or the whole document. */
interface Slot {
  readonly node: Node | undefined;
  readonly mark: number | undefined;
  readonly keyEnd: number;
  /** The column of the key or dash it belongs to; -1 for the document. */
  readonly column: number;
  readonly inFlow: boolean;
  readonly inList: boolean;
}

/** How far a path leads: the slots on the way, the document's first; it ends where an entry is missing. */
export function slotsAlong(source: YamlSource, path: Path): readonly Slot[] {
  const { text } = source;
  const slots: Slot[] = [
    { node: rootOf(source), mark: undefined, keyEnd: 0, column: -1, inFlow: false, inList: false },
  ];
  for (const key of path) {
    const { node, inFlow } = slots.at(-1)!;
    const entry = entryAt(node, key);
    if (entry === undefined) return slots;
    const { mark, keyEnd, start } = entry;
    const flow = inFlow || isFlow(node);
    slots.push({ node: entry.node, mark, keyEnd, column: column(text, start), inFlow: flow, inList: isSeq(node) });
  }
  return slots;
}

function entryAt(node: Node | undefined, key: string | number): Entry | undefined {
  if (isMap(node)) return entriesOf(node).find((each) => each.key === String(key));
  return isSeq(node) ? entriesOf(node).find((each) => each.key === key) : undefined;
}

/** The text with one edit made in it; all that it does not touch stays as it is, byte for byte. Throws Refusal. */
export function spliced(source: YamlSource, edit: Edit): string {
  const { path, yaml, before } = edit;
  if (path.length === 0) return yaml ?? '';
  const slots = slotsAlong(source, path);
  const last = slots.at(-1)!;
  const whole = slots.length > path.length;
  if (yaml === undefined) return whole ? without(source, slots.at(-2)!, path.at(-1)!) : source.text;
  const fragment = yamlFragment(yaml);
  const inserted = before !== undefined && typeof path.at(-1) === 'number';
  if (whole && !inserted) return put(source, last, fragment);
  const home = whole ? slots.at(-2)! : last;
  const rest = path.slice(whole ? -1 : slots.length - 1);
  const below = rest.slice(1).reduceRight<YamlFragment>((held, key) => entryFragment(key, held), fragment);
  return added(source, home, rest[0]!, below, rest.length === 1 ? before : undefined);
}

const inLines = (source: YamlSource, text: string): string =>
  source.lineBreak === '\n' ? text : text.replaceAll('\n', source.lineBreak);

function put(source: YamlSource, slot: Slot, fragment: YamlFragment): string {
  const { text, lineBreak } = source;
  const { node, mark } = slot;
  if (slot.inFlow) return putInFlow(text, slot, flowText(fragment));
  if (mark === undefined) return putAsDocument(source, node, fragment);
  if (isBlockCollection(node)) {
    const start = node!.range![0];
    const columns = column(text, start);
    if (fragment.shape === 'block' && (columns > slot.column || fragment.list)) {
      const block = inLines(source, indented(fragment.text, columns, 'but the first'));
      return text.slice(0, start) + block + text.slice(blockEndOf(text, node!));
    }
  } else if (node !== undefined && fragment.shape === 'inline') {
    const own = inLines(source, indented(fragment.text, Math.max(slot.column, 0), 'but the first'));
    return text.slice(0, node.range![0]) + own + text.slice(endOf(text, node));
  }
  const bare = emptied(text, slot);
  const end = lineEnd(bare, mark);
  const comment = bare.slice(mark, end).trimEnd();
  if (fragment.shape === 'nothing') return bare;
  if (fragment.shape === 'inline') {
    const own = inLines(source, indented(fragment.text, slot.column, 'but the first'));
    return `${bare.slice(0, mark)} ${own}${bare.slice(mark)}`;
  }
  if (fragment.shape === 'block-scalar') {
    const [header, ...lines] = indented(fragment.text, slot.column, 'but the first').split('\n');
    const own = [` ${header}${comment.trim() === '' ? '' : ` ${comment.trim()}`}`, ...lines].join(lineBreak);
    return bare.slice(0, mark) + own + bare.slice(end);
  }
  const block = inLines(source, indented(fragment.text, slot.column + 2, 'every line'));
  if (slot.inList && comment === '' && !/^\s*#/.test(block)) {
    return `${bare.slice(0, mark)} ${block.trimStart()}${bare.slice(end)}`;
  }
  return bare.slice(0, end) + lineBreak + block + bare.slice(end);
}

function putInFlow(text: string, { node, mark, keyEnd, inList }: Slot, own: string): string {
  if (node !== undefined) return text.slice(0, node.range![0]) + own + text.slice(endOf(text, node));
  if (mark !== undefined) return `${text.slice(0, mark)} ${own}${text.slice(mark)}`;
  return text.slice(0, keyEnd) + (inList ? own : `: ${own}`) + text.slice(keyEnd);
}

function putAsDocument(source: YamlSource, node: Node | undefined, fragment: YamlFragment): string {
  const { text, lineBreak } = source;
  const own = inLines(source, fragment.text);
  if (node === undefined) return `${text}${text === '' || /[\n\ufeff]$/.test(text) ? '' : lineBreak}${own}${lineBreak}`;
  const end = isBlockCollection(node) ? blockEndOf(text, node) : endOf(text, node);
  return text.slice(0, node.range![0]) + own + text.slice(end);
}

/** The text without what stands behind a key or dash, its comments left. */
function emptied(text: string, { node, mark }: Slot): string {
  if (node === undefined) return text;
  const start = node.range![0];
  const end = isBlockCollection(node) ? blockEndOf(text, node) : endOf(text, node);
  if (lineStart(text, start) <= mark!) return text.slice(0, mark) + text.slice(end);
  if (text.slice(end, lineEnd(text, end)).trim() === '') {
    return (
      text.slice(0, lineEnd(text, lineStart(text, start) - 1 - (text[lineStart(text, start) - 2] === '\r' ? 1 : 0))) +
      text.slice(lineEnd(text, end))
    );
  }
  return text.slice(0, start) + text.slice(end).trimStart();
}

function entryFragment(key: string | number, fragment: YamlFragment): YamlFragment {
  const bare = yamlSource(typeof key === 'number' ? '-' : `${keyText(key)}:`);
  if (typeof key === 'number' && key !== 0) throw new Refusal({ read: String(key), expected: 'the next of a list' });
  const only = entriesOf(rootOf(bare))[0]!;
  const slot: Slot = { ...only, column: 0, inFlow: false, inList: typeof key === 'number' };
  return yamlFragment(put(bare, slot, fragment));
}

function added(source: YamlSource, home: Slot, key: string | number, fragment: YamlFragment, before?: string | number) {
  const { text, lineBreak } = source;
  const { node } = home;
  const entries = entriesOf(node);
  const own = (): YamlFragment => entryFragment(typeof key === 'number' ? 0 : key, fragment);
  if (node !== undefined && !isMap(node) && !isSeq(node)) {
    throw new Refusal({
      read: text.slice(...node.range!.slice(0, 2)),
      expected: `a mapping or list that can hold '${key}'`,
    });
  }
  if (node !== undefined && isSeq(node) !== (typeof key === 'number')) {
    throw new Refusal({ read: String(key), expected: isSeq(node) ? 'the number of an element' : 'a key' });
  }
  if (typeof key === 'number' && key > entries.length) {
    throw new Refusal({ read: String(key), expected: `at most ${entries.length}, the next of the list` });
  }
  if (entries.length === 0) {
    if (home.inFlow) return putInFlow(text, home, oneLine(own().node));
    return put(source, home, own());
  }
  const next = before === undefined ? undefined : entryAt(node, before);
  if (isFlow(node)) {
    const piece = typeof key === 'number' ? flowText(fragment) : `${keyText(key)}: ${flowText(fragment)}`;
    if (next !== undefined) return `${text.slice(0, next.start)}${piece}, ${text.slice(next.start)}`;
    const end = entryEnd(text, entries.at(-1)!);
    return `${text.slice(0, end)}, ${piece}${text.slice(end)}`;
  }
  const columns = column(text, entries[0]!.start);
  if (next === undefined) {
    const end = lineEnd(text, entryEnd(text, entries.at(-1)!));
    return (
      text.slice(0, end) + lineBreak + inLines(source, indented(own().text, columns, 'every line')) + text.slice(end)
    );
  }
  const piece = inLines(source, indented(own().text, columns, 'but the first')) + lineBreak + ' '.repeat(columns);
  return text.slice(0, next.start) + piece + text.slice(next.start);
}

function entryEnd(text: string, { node, mark, keyEnd }: Entry): number {
  return node === undefined ? (mark ?? keyEnd) : endOf(text, node);
}

function without(source: YamlSource, home: Slot, key: string | number): string {
  const { text } = source;
  const { node } = home;
  const entries = entriesOf(node);
  const index = entries.findIndex((each) => String(each.key) === String(key));
  const entry = entries[index]!;
  if (entries.length === 1) return put(source, home, yamlFragment(isSeq(node) ? '[]' : '{}'));
  const next = entries[index + 1];
  const end = entryEnd(text, entry);
  if (isFlow(node)) {
    if (next !== undefined) return text.slice(0, entry.start) + text.slice(next.start);
    return text.slice(0, entryEnd(text, entries[index - 1]!)) + text.slice(end);
  }
  const line = lineStart(text, entry.start);
  if (text.slice(line, entry.start).replace('\ufeff', '').trim() !== '') {
    return text.slice(0, entry.start) + text.slice(next!.start);
  }
  if (nextLine(text, end) < text.length || text.endsWith('\n')) {
    const rest = text.slice(nextLine(text, end));
    const previous = keepsBlankLines(text, entries[index - 1]?.node);
    return (
      text.slice(0, entry.start - column(text, entry.start)) + (previous ? rest.replace(/^(?:[ \t]*\r?\n)+/, '') : rest)
    );
  }
  const rest = text.slice(0, line);
  const ended = rest.replace(/\r?\n$/, '');
  return ended.endsWith('\n') ? rest : ended;
}
