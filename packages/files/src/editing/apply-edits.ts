import { Refusal } from '@soundpost/core';
import type { Node } from 'yaml';
import type { Edit } from './edit.ts';
import { latelyRead, remembered } from './lately-read.ts';
import { oneLine, outdented, yamlFragment } from './yaml-fragment.ts';
import {
  blockEndOf,
  column,
  endOf,
  entriesOf,
  isBlockCollection,
  keepsBlankLines,
  nextLine,
  rootOf,
  type YamlSource,
  yamlSource,
} from './yaml-source.ts';
import { slotsAlong, spliced } from './yaml-splice.ts';

/**
 * Makes edits in a YAML text, one after the other, and gives what undoes them. All that an edit does not touch stays as
 * it is, byte for byte: comments, quotes, the way a number is written. Making the undoing edits in the new text gives
 * the old one again, byte for byte. Missing mappings on the way are made. What stands inside `{…}` or `[…]` is put
 * there in one line. Comments above an entry that is taken away stay. Throws Refusal for a text that is no YAML and for
 * a path that leads nowhere.
 */
export function applyEdits(
  text: string,
  edits: readonly Edit[],
): { readonly text: string; readonly undo: readonly Edit[] } {
  let now = latelyRead(text);
  const undo: Edit[] = [];
  for (const edit of edits) {
    const next = edited(now, edit);
    if (next.text === now.text) continue;
    undo.unshift(undoing(now, next, edit));
    now = next;
  }
  remembered(now);
  return { text: now.text, undo };
}

/** The YAML text of what stands at a path, as an edit would put it there; undefined where nothing does. */
export function yamlAt(text: string, path: Edit['path']): string | undefined {
  return yamlIn(latelyRead(text), path);
}

function edited(source: YamlSource, edit: Edit): YamlSource {
  if (edit.key !== undefined) return renamed(source, edit.path, edit.key);
  const first = attempt(source, edit);
  if (!(first instanceof Refusal)) return first;
  const node = edit.yaml === undefined ? undefined : yamlFragment(edit.yaml).node;
  if (node === undefined) throw first;
  const second = attempt(source, { ...edit, yaml: oneLine(node) });
  if (second instanceof Refusal) throw first;
  return second;
}

/** The text with one key written otherwise. Throws Refusal where there is no such key, or another is called that. */
function renamed(source: YamlSource, path: Edit['path'], key: string): YamlSource {
  const { text } = source;
  const home = path.slice(0, -1);
  const entries = entriesOf(slotsAlong(source, home)[home.length]?.node);
  const entry = entries.find((each) => each.key === path.at(-1));
  const read = `${path.join('/')} as ${key}`;
  if (entry === undefined || typeof entry.key === 'number') {
    throw new Refusal({ read, expected: 'an entry of that name' });
  }
  const next = yamlSource(text.slice(0, entry.start) + key + text.slice(entry.keyEnd));
  const names = entriesOf(slotsAlong(next, home)[home.length]?.node).map((each) => each.key);
  const at = entries.indexOf(entry);
  const others = entries.map((each) => each.key).toSpliced(at, 1);
  if (
    key.trim() === '' ||
    names.length !== entries.length ||
    others.some((each, index) => each !== names.toSpliced(at, 1)[index])
  ) {
    throw new Refusal({ read, expected: 'a key that is one word or text' });
  }
  if (others.includes(names[at]!)) throw new Refusal({ read, expected: 'a name that no other entry there has' });
  return next;
}

/** The new text read again, with what was to be put there found in it. */
function attempt(source: YamlSource, edit: Edit): YamlSource | Refusal {
  const { path, yaml } = edit;
  const text = spliced(source, edit);
  try {
    const next = yamlSource(text);
    if (isFoundIn(next, edit)) return next;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
  }
  return new Refusal({ read: yaml ?? '', expected: `YAML that can stand at ${path.join('/')}` });
}

function isFoundIn(source: YamlSource, { path, yaml }: Edit): boolean {
  if (path.length === 0 || yaml === undefined) return true;
  return oneLine(slotsAlong(source, path)[path.length]?.node) === oneLine(yamlFragment(yaml).node);
}

/** The smallest edit that gives the old text again to the byte; the largest, the whole text, always does. */
function undoing(before: YamlSource, after: YamlSource, edit: Edit): Edit {
  for (const candidate of candidates(before, edit)) {
    try {
      const back = candidate.key === undefined ? spliced(after, candidate) : edited(after, candidate).text;
      if (back === before.text && (candidate.key !== undefined || isFoundIn(before, candidate))) return candidate;
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
    }
  }
  return { path: [], yaml: before.text };
}

function* candidates(before: YamlSource, { path, yaml, before: next, key }: Edit): Generator<Edit> {
  if (key !== undefined) return yield* renamingBack(before, path, key);
  const slots = slotsAlong(before, path);
  const inserted = next !== undefined && typeof path.at(-1) === 'number';
  if (slots.length <= path.length || inserted) yield { path: path.slice(0, slots.length), yaml: undefined };
  if (inserted) yield { path, yaml: undefined };
  if (yaml === undefined) {
    const entries = entriesOf(slots.at(-2)?.node);
    const index = entries.findIndex((each) => String(each.key) === String(path.at(-1)));
    const follower = entries[index + 1];
    const own = yamlIn(before, path);
    if (follower !== undefined) {
      yield { path, yaml: own, before: typeof follower.key === 'number' ? follower.key - 1 : follower.key };
    }
  }
  for (let length = Math.min(path.length, slots.length - 1); length > 0; length--) {
    const some = path.slice(0, length);
    yield { path: some, yaml: yamlIn(before, some) };
  }
}

function* renamingBack(before: YamlSource, path: Edit['path'], key: string): Generator<Edit> {
  const home = path.slice(0, -1);
  const entry = entriesOf(slotsAlong(before, home)[home.length]?.node).find((each) => each.key === path.at(-1));
  const [now] = entriesOf(rootOf(yamlSource(`${key}:`)));
  if (entry === undefined || now === undefined) return;
  yield { path: [...home, now.key], key: before.text.slice(entry.start, entry.keyEnd) };
}

function yamlIn(source: YamlSource, path: Edit['path']): string | undefined {
  const slot = slotsAlong(source, path)[path.length];
  if (path.length === 0) return source.text;
  if (slot === undefined) return undefined;
  return slot.node === undefined ? '' : ownText(source.text, slot.node, slot.inFlow ? 0 : slot.column);
}

function ownText(text: string, node: Node, keyColumn: number): string {
  const start = node.range![0];
  const block = isBlockCollection(node);
  const end = block ? blockEndOf(text, node) : endOf(text, node);
  const own = text.slice(start, keepsBlankLines(text, node) ? nextLine(text, end) : end).replaceAll('\r\n', '\n');
  return outdented(own, block ? column(text, start) : keyColumn, 'but the first');
}
