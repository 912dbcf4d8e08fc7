import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { root } from '../reading.ts';

/** The text of the demo plant, to make one mistake in. */
export const demoPlant = readFileSync(resolve(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');
const genericCatalogue = readFileSync(resolve(root, 'packages/files/catalogues/generic.yaml'), 'utf8');

/** A text with one place written otherwise; a place that is not there is a mistake of the test. */
export function written(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`the text does not hold '${from}'`);
  return text.replace(from, () => to);
}

/** The lines of a part of the generic catalogue, its name first. */
function partText(shelf: string, name: string): readonly string[] {
  const lines = genericCatalogue.split('\n');
  const shelfAt = lines.indexOf(`${shelf}:`);
  const from = lines.findIndex((line, index) => index > shelfAt && line === `  ${name}:`);
  const past = lines.findIndex((line, index) => index > from && !line.startsWith('    '));
  if (shelfAt < 0 || from < 0 || past < 0) throw new Error(`the generic catalogue has no ${name} among its ${shelf}`);
  return lines.slice(from, past);
}

/** The demo plant with a part of its own in place of the one of the catalogue, in which one thing is written otherwise. */
export function plantWithPart(shelf: string, name: string, from: string, to: string): string {
  const part = written(partText(shelf, name).join('\n'), from, to).replace(/^/gm, '  ');
  return written(demoPlant, 'policy:\n', `parts:\n  ${shelf}:\n${part}\npolicy:\n`);
}

/** The demo plant with a pair of gears between motor and pump in place of the coupling. */
export function plantWithGears(driving: number, driven: number): string {
  const gears = `kind: gear-pair\n        driving-teeth: ${driving}\n        driven-teeth: ${driven}\n        ratio: 3.36`;
  return written(demoPlant, 'kind: coupling', gears);
}

/** Line and column, from 1, of the first place where a text stands. */
export function placeOf(text: string, sought: string): { readonly line: number; readonly column: number } {
  const at = text.indexOf(sought);
  if (at < 0) throw new Error(`the text does not hold '${sought}'`);
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: before.at(-1)!.length + 1 };
}
