import { isMap, isScalar, isSeq, type Node, Scalar } from 'yaml';
import {
  endOf,
  entriesOf,
  isBlockCollection,
  isBlockScalar,
  rootOf,
  type YamlSource,
  yamlSource,
} from './yaml-source.ts';

/** A piece of YAML that is put into a text, its lines beginning in the first column and ended by `\n`. */
export interface YamlFragment {
  readonly text: string;
  /** Nothing; a part within a line; a text that begins with | or >; a mapping or list on lines of its own. */
  readonly shape: 'nothing' | 'inline' | 'block-scalar' | 'block';
  readonly node: Node | undefined;
  readonly list: boolean;
}

/** Throws Refusal for a text that is no YAML. */
export function yamlFragment(yaml: string): YamlFragment {
  const source = yamlSource(yaml.replaceAll('\r\n', '\n'));
  const node = rootOf(source);
  const list = isSeq(node);
  if (node === undefined) return { text: '', shape: 'nothing', node, list };
  const [start, end] = node.range ?? [0, 0];
  if (isBlockCollection(node)) return { text: blockText(source, node), shape: 'block', node, list };
  if (isBlockScalar(node)) return { text: blockScalarText(source, node), shape: 'block-scalar', node, list };
  const comment = /^[ \t]+#[^\n]*(?=\s*$)/.exec(source.text.slice(end))?.[0] ?? '';
  return { text: deepened(source.text.slice(start, end)) + comment, shape: 'inline', node, list };
}

function blockText({ text }: YamlSource, node: Node): string {
  const rest = text.slice(endOf(text, node));
  const whole = text.slice(0, endOf(text, node)) + rest.trimEnd();
  const own = /(?:^|\n)([ ]*)[^\s#]/.exec(whole)?.[1] ?? '';
  return outdented(whole.replace(/^(?:[ \t]*\n)+/, ''), own.length, 'every line');
}

function blockScalarText({ text }: YamlSource, node: Node): string {
  return deepened(text.slice(node.range?.[0], endOf(text, node)));
}

/** What goes on in further lines has to stand deeper than the key it will belong to. */
function deepened(text: string): string {
  const lines = text.split('\n');
  const shallow = lines.slice(1).some((line) => /^\S/.test(line));
  return shallow ? indented(text, 2, 'but the first') : text;
}

/** The fragment as it may stand between the brackets of a flow collection, in one line. */
export function flowText({ text, node }: YamlFragment): string {
  const flow = node !== undefined && !isScalar(node) && !isBlockCollection(node);
  if (!flow || /[\n#]/.test(text)) return oneLine(node);
  const [start, end] = node.range ?? [0, 0];
  return text.slice(0, end - start);
}

/** Everything in one line: what was typed where it may stand there, quoted where it must be. */
export function oneLine(node: Node | undefined): string {
  const entries = entriesOf(node).map(({ key, node: value }) =>
    typeof key === 'string' ? `${keyText(key)}: ${oneLine(value)}` : oneLine(value),
  );
  if (isMap(node)) return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`;
  if (isSeq(node)) return `[${entries.join(', ')}]`;
  if (!isScalar(node)) return 'null';
  const plain = node.type === Scalar.PLAIN && !/[[\]{},\n]/.test(node.source ?? '');
  return plain ? (node.source ?? '') : JSON.stringify(node.value);
}

/** A key as it is written before its colon. */
export function keyText(key: string): string {
  const plain = /^[\p{L}_](?:[\p{L}\p{N} _./()+-]*[\p{L}\p{N}_)])?$/u.test(key);
  if (plain && !/^(?:true|false|null|~)$/i.test(key)) return key;
  return /[\p{Cc}\p{Cf}]/u.test(key) ? JSON.stringify(key) : `'${key.replaceAll("'", "''")}'`;
}

export function indented(text: string, columns: number, which: 'every line' | 'but the first'): string {
  const lines = text.split('\n');
  const from = which === 'every line' ? 0 : 1;
  return lines
    .map((line, index) => (index < from || line.trim() === '' ? line : ' '.repeat(columns) + line))
    .join('\n');
}

/** Takes as much indentation away as there is, up to so many columns. */
export function outdented(text: string, columns: number, which: 'every line' | 'but the first'): string {
  const from = which === 'every line' ? 0 : 1;
  return text
    .split('\n')
    .map((line, index) => (index < from ? line : line.slice(Math.min(columns, /^ */.exec(line)![0].length))))
    .join('\n');
}
