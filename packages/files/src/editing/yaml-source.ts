import { Refusal } from '@soundpost/core';
import { type CST, type Document, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, Scalar } from 'yaml';

/** A YAML text with its parts found in it. */
export interface YamlSource {
  readonly text: string;
  readonly document: Document.Parsed;
  /** How its lines end. */
  readonly lineBreak: '\n' | '\r\n';
}

/** Reads a text as one YAML document whose parts know where they stand. Throws Refusal where it is none. */
export function yamlSource(text: string): YamlSource {
  const options = { version: '1.2', schema: 'core', keepSourceTokens: true, uniqueKeys: false, logLevel: 'silent' };
  const document = parseDocument(text, options as never);
  const [error] = document.errors;
  if (error !== undefined) {
    const line = text.slice(lineStart(text, error.pos[0]), lineEnd(text, error.pos[0]));
    throw new Refusal({ read: line.trim(), expected: 'YAML that can be read', suggestion: `${error.message}.` });
  }
  return { text, document, lineBreak: /^[^\n]*\r\n/.test(text) ? '\r\n' : '\n' };
}

/** A key with its value, or an element of a list. */
export interface Entry {
  readonly key: string | number;
  readonly start: number;
  /** Behind the ':' or the '-'; undefined where a flow collection has none. */
  readonly mark: number | undefined;
  /** Behind the key itself. */
  readonly keyEnd: number;
  readonly node: Node | undefined;
}

/** The entries of a mapping or list in their order; nothing for a scalar. */
export function entriesOf(node: Node | undefined): readonly Entry[] {
  if (isMap(node)) return (node.items as Pair<Node, Node | null>[]).map(pairEntry);
  if (!isSeq(node)) return [];
  const tokens = (node.srcToken as CST.BlockSequence | undefined)?.items ?? [];
  const marks = tokens.flatMap(({ start }) => start.filter((each) => each.type === 'seq-item-ind'));
  return (node.items as Node[]).map((each, index) => {
    const start = marks[index]?.offset ?? each.range?.[0] ?? 0;
    const mark = marks[index] === undefined ? undefined : start + 1;
    return { key: index, start, mark, keyEnd: mark ?? start, node: standing(each) };
  });
}

function pairEntry(pair: Pair<Node, Node | null>): Entry {
  const [start, keyEnd] = pair.key.range ?? [0, 0];
  const token = (pair as { srcToken?: CST.CollectionItem }).srcToken;
  const sign = token?.sep?.find((each) => each.type === 'map-value-ind');
  const mark = sign === undefined ? undefined : sign.offset + 1;
  return { key: keyOf(pair.key), start, mark, keyEnd, node: standing(pair.value) };
}

/** A key as it was typed, as the reader of plant files has it: `012` is not 12. */
function keyOf(key: Node): string {
  if (!isScalar(key)) throw new Refusal({ read: String(key), expected: 'a key that is one word or text' });
  return typeof key.value === 'string' ? key.value : (key.source ?? String(key.value));
}

/** What stands in the text; the empty place behind a key does not. */
function standing(node: Node | null | undefined): Node | undefined {
  return isScalar(node) && node.type === Scalar.PLAIN && node.source === '' ? undefined : (node ?? undefined);
}

export function rootOf({ document }: YamlSource): Node | undefined {
  return standing(document.contents);
}

export function isFlow(node: Node | undefined): boolean {
  return (isMap(node) || isSeq(node)) && node.flow === true;
}

export function isBlockCollection(node: Node | undefined): boolean {
  return (isMap(node) || isSeq(node)) && node.flow !== true;
}

export function isBlockScalar(node: Node | undefined): boolean {
  return isScalar(node) && (node.type === Scalar.BLOCK_LITERAL || node.type === Scalar.BLOCK_FOLDED);
}

/** Where the text of a part ends: behind its last sign, without a comment that follows. */
export function endOf(text: string, node: Node): number {
  const { leaf, end } = lastOf(node);
  if (leaf === undefined) return end;
  const [from, to] = leaf.range ?? [0, 0];
  if (!isBlockScalar(leaf)) return to;
  if (keepsBlankLines(text, leaf)) return to - /(?:\r?\n)?$/.exec(text.slice(from, to))![0].length;
  return from + text.slice(from, to).trimEnd().length;
}

/** Whether a part ends with a text marked `|+`, to which the blank lines that follow belong. */
export function keepsBlankLines(text: string, node: Node | undefined): boolean {
  const leaf = node === undefined ? undefined : lastOf(node).leaf;
  const start = leaf?.range?.[0] ?? 0;
  return isBlockScalar(leaf) && /^[|>]\d?\+/.test(text.slice(start, start + 3));
}

/** The last part of a block that is none itself; where nothing stands behind its last key, the end of that. */
function lastOf(node: Node): { readonly leaf: Node | undefined; readonly end: number } {
  if (!isBlockCollection(node)) return { leaf: node, end: node.range?.[1] ?? 0 };
  const last = entriesOf(node).at(-1);
  if (last?.node !== undefined) return lastOf(last.node);
  return { leaf: undefined, end: last?.mark ?? last?.keyEnd ?? node.range?.[1] ?? 0 };
}

/** The same, with the comment that follows in the last line of a block. */
export function blockEndOf(text: string, node: Node): number {
  return lineEnd(text, endOf(text, node));
}

export function lineStart(text: string, offset: number): number {
  return offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
}

/** Where the line ends, before its line break. */
export function lineEnd(text: string, offset: number): number {
  const at = text.indexOf('\n', offset);
  if (at < 0) return text.length;
  return at > offset && text[at - 1] === '\r' ? at - 1 : at;
}

/** Where the next line starts. */
export function nextLine(text: string, offset: number): number {
  const at = text.indexOf('\n', offset);
  return at < 0 ? text.length : at + 1;
}

export function column(text: string, offset: number): number {
  return offset - lineStart(text, offset) - (text.startsWith('\ufeff') && lineStart(text, offset) === 0 ? 1 : 0);
}
