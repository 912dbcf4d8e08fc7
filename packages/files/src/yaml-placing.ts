import { shortened } from '@soundpost/core';
import { isMap, isScalar, isSeq, type Node, type Pair, Scalar, type YAMLMap } from 'yaml';
import type { Refusals } from './file-refusal.ts';
import type { Place, Placed, PlacedEntry } from './placed.ts';
import { placeAt, type TextFile } from './text-file.ts';
import { unseenIn } from './unseen.ts';
import { mostValues, tooMany } from './yaml-checks.ts';
import { reservedName } from './yaml-reasons.ts';

/** Makes the placed tree of a composed document, which by now is at most forty deep. */
export class Placing {
  readonly #text: TextFile;
  readonly #refusals: Refusals;
  #values = 0;

  constructor(text: TextFile, refusals: Refusals) {
    this.#text = text;
    this.#refusals = refusals;
  }

  node(node: Node | null, path: string, otherwise: number): Placed {
    const offset = node?.range?.[0] ?? otherwise;
    const place = placeAt(this.#text, offset, path);
    if (++this.#values > mostValues) this.#refusals.stop(place, tooMany);
    if (isMap(node)) return { kind: 'map', ...place, entries: this.#entries(node, path, offset) };
    if (isSeq(node)) {
      const elements = node.items.map((each, index) => this.node(each as Node, under(path, `${index + 1}`), offset));
      return { kind: 'list', ...place, elements };
    }
    return { kind: 'scalar', ...place, ...this.#scalar(node, place) };
  }

  #scalar(node: Node | null, place: Place): { source: string; value: string | number | boolean | null } {
    if (!isScalar(node)) return { source: '', value: null };
    const value = node.value;
    const known = typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
    if (node.type === Scalar.QUOTE_DOUBLE) this.#seen(String(value), place);
    if (typeof value === 'string') return { source: value, value };
    return { source: node.source ?? '', value: known ? value : null };
  }

  /** Escapes in a quoted text can bring back what the text of a file may not hold. */
  #seen(text: string, place: Place): void {
    const reason = unseenIn(text);
    if (reason !== undefined) this.#refusals.add(place, reason);
  }

  #entries(map: YAMLMap, path: string, offset: number): readonly PlacedEntry[] {
    const entries = new Map<string, PlacedEntry>();
    let before: PlacedEntry | undefined;
    for (const pair of map.items as Pair<Node, Node | null>[]) {
      if (before !== undefined && map.flow === true && this.#divides(before.value, pair)) {
        this.#refuseComma(before.value, pair.key.range![1]);
        continue;
      }
      const at = placeAt(this.#text, pair.key?.range?.[0] ?? offset, path);
      const key = this.#key(pair.key, at);
      if (key === undefined) continue;
      const first = entries.get(key);
      if (first !== undefined) {
        this.#refusals.add(at, {
          read: key,
          expected: 'each key once',
          suggestion: `It stands in line ${first.at.line} already.`,
        });
        continue;
      }
      const end = pair.key?.range?.[1] ?? offset;
      before = { key, at: { ...at, path: under(path, key) }, value: this.node(pair.value, under(path, key), end) };
      entries.set(key, before);
    }
    return [...entries.values()];
  }

  /** Whether what looks like a key is what stands behind the decimal comma of a number: `9 mm/s` of `{ value: 1,9 mm/s }`. */
  #divides(before: Placed, pair: Pair<Node, Node | null>): boolean {
    const offset = pair.key?.range?.[0] ?? 0;
    const number = before.kind === 'scalar' && /\d$/.test(before.source);
    return number && pair.value === null && /^\d,\d/.test(this.#text.text.slice(offset - 2, offset + 1));
  }

  #refuseComma(value: Placed, end: number): void {
    const start = this.#text.lineStarts[value.line - 1]! + value.column - 1;
    const typed = shortened(this.#text.text.slice(start, end), 40);
    this.#refusals.explain(value, {
      read: typed,
      expected: `a number without a comma: inside { } a comma divides '${typed.slice(0, typed.indexOf(','))}' from the rest`,
      suggestion:
        `Write a decimal point ('${typed.replace(',', '.')}'); in a file that declares 'decimals: comma', put it in quotes ` +
        `('${typed}').`,
    });
  }

  #key(node: Node | null, at: Place): string | undefined {
    if (!isScalar(node)) {
      this.#refusals.add(at, {
        read: isMap(node) || isSeq(node) ? 'a collection as a key' : '',
        expected: 'a word as key',
      });
      return undefined;
    }
    const key = this.#scalar(node, at).source.normalize('NFC');
    const reason = reservedName(key, node.type === Scalar.PLAIN);
    if (reason !== undefined) this.#refusals.add(at, reason);
    return reason === undefined ? key : undefined;
  }
}

function under(path: string, name: string): string {
  return path === '' ? name : `${path}/${name}`;
}
