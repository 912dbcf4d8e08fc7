import { isScalar, type Node, Scalar } from 'yaml';
import type { Edit } from './edit.ts';
import { latelyRead } from './lately-read.ts';
import { keyText } from './yaml-fragment.ts';
import { entriesOf } from './yaml-source.ts';
import { slotsAlong } from './yaml-splice.ts';

/**
 * What calls the entry at a path by another name; what stands there stays, and the new key is written as the old one
 * was, in quotes or without. Nothing where there is no such entry.
 */
export function renamingEdits(text: string, path: Edit['path'], name: string): readonly Edit[] {
  const home = path.slice(0, -1);
  const source = latelyRead(text);
  const entry = entriesOf(slotsAlong(source, home)[home.length]?.node).find((each) => each.key === path.at(-1));
  if (entry === undefined || entry.key === name) return [];
  const own = text.slice(entry.start, entry.keyEnd);
  return [{ path, key: inTheHandOf(own, String(entry.key), name) }];
}

/** What puts another text where one stands, in quotes where the old one was; nothing where no plain text stands there. */
export function rewordingEdits(text: string, path: Edit['path'], words: string): readonly Edit[] {
  const node = slotsAlong(latelyRead(text), path)[path.length]?.node;
  if (!isOneWord(node) || node.range == null) return [];
  const own = text.slice(node.range[0], node.range[1]);
  return [{ path, yaml: inTheHandOf(own, String(node.value), words) }];
}

function isOneWord(node: Node | undefined): node is Scalar {
  return isScalar(node) && node.type !== Scalar.BLOCK_LITERAL && node.type !== Scalar.BLOCK_FOLDED;
}

/** Words that YAML reads as they are, without quotes, where the hand before wrote without them. */
const bare = /^[\p{L}\p{N}_](?:[\p{L}\p{N} _./()+*×-]*[\p{L}\p{N}_)])?$/u;
const otherwise = /^(?:true|false|null|[\d.]+)$/i;

function inTheHandOf(own: string, before: string, words: string): string {
  const quote = own[0];
  const needed = !bare.test(before) || otherwise.test(before);
  if (quote === "'" && !needed && !/[\p{Cc}\p{Cf}]/u.test(words)) return `'${words.replaceAll("'", "''")}'`;
  if (quote === '"' && !needed) return JSON.stringify(words);
  return bare.test(words) && !otherwise.test(words) ? words : keyText(words);
}
