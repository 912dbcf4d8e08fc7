import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import { completenessFindings, design, questions, wording } from '../../packages/core/src/index.ts';
import { UnreadableFile } from '../../packages/files/src/file-refusal.ts';
import { plantReader, readYaml } from '../../packages/files/src/index.ts';
import { genericCatalogue } from '../reading.ts';

export type KeyPath = readonly (string | number)[];

/** Every entry of every map and every item of every list of a plant file, parents before their children. */
export function keysOf(text: string): readonly KeyPath[] {
  const found: KeyPath[] = [];
  const walk = (node: unknown, path: KeyPath): void => {
    const children: readonly (readonly [string | number, unknown])[] = isMap(node)
      ? node.items.map(({ key, value }) => [isScalar(key) ? String(key.value) : String(key), value])
      : isSeq(node)
        ? node.items.map((item, index) => [index, item])
        : [];
    for (const [key, value] of children) {
      found.push([...path, key]);
      walk(value, [...path, key]);
    }
  };
  walk(parseDocument(text).contents, []);
  return found;
}

export function without(text: string, path: KeyPath): string {
  const document = parseDocument(text);
  document.deleteIn(path);
  return String(document);
}

/**
 * The plant with the points only that a key can touch: its own, or those whose chain uses its part; all of them where it
 * stands higher. A key is judged on a design of one point in place of all, which is what makes a test of each possible.
 */
export function aroundKey(text: string, [top, second, third, fourth, ...rest]: KeyPath): string {
  const document = parseDocument(text);
  const plant = document.toJS() as {
    readonly machines: Readonly<Record<string, { readonly points: Readonly<Record<string, unknown>> }>>;
  };
  const keeps = (machine: string, point: string): boolean => {
    if (top === 'machines') {
      if (third === undefined) return true;
      return machine === second && (third !== 'points' || rest.length === 0 || point === fourth);
    }
    const part = top === 'parts' && fourth !== undefined ? String(third) : undefined;
    return part === undefined || JSON.stringify(plant.machines[machine]!.points[point]).includes(`"${part}"`);
  };
  for (const [machine, { points }] of Object.entries(plant.machines)) {
    const left = Object.keys(points).filter((point) => keeps(machine, point));
    if (left.length === 0) document.deleteIn(['machines', machine]);
    else
      for (const point of Object.keys(points))
        if (!left.includes(point)) document.deleteIn(['machines', machine, 'points', point]);
  }
  return String(document);
}

const generic = genericCatalogue();

export interface Said {
  readonly refused: boolean;
  /** Why it is refused, or what its design finds, lacks and asks. */
  readonly sentences: readonly string[];
}

export function saidOf(text: string): Said {
  try {
    const bytes = new TextEncoder().encode(text);
    const of = design(
      readYaml(
        bytes,
        'plant.yaml',
        plantReader(() => generic),
      ).value,
      1,
    );
    const findings = [...of.findings, ...completenessFindings(of)].filter(({ weight }) => weight !== 'notes');
    return {
      refused: false,
      sentences: [
        ...findings.map((each) => `${each.rule}: ${wording(each)}`),
        ...questions(of).map((each) => JSON.stringify(each)),
      ],
    };
  } catch (error) {
    if (!(error instanceof UnreadableFile)) throw error;
    return { refused: true, sentences: [error.message] };
  }
}
