import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '..');
export const genericCatalogue = join(root, 'packages/files/catalogues/generic.yaml');
export const pumpPoint = 'P-301/pump-drive-end-horizontal';

const read = (path) => readFileSync(join(root, path), 'utf8');

/** The plant of the first example, with a cable so long that its length is seen in the picture. */
export const pump = () =>
  read('examples/raw-water-pump/plant.yaml').replace('cable-length: 2 m', 'cable-length: 300 m');

/** The generic catalogue with its seven mounts, filled up to so many transducers: its accelerometers, no two alike. */
export function wideCatalogue(transducers) {
  const text = readFileSync(genericCatalogue, 'utf8');
  const [, head, list, rest] = /^([\s\S]*?^transducers:\n)([\s\S]*?)(^mounts:[\s\S]*)$/m.exec(text);
  const all = list.split(/^(?= {2}\S)/m);
  const copied = all.filter((each) => /kind: iepe-accelerometer/.test(each));
  const more = Array.from({ length: transducers - all.length }, (_, count) =>
    copied[count % copied.length]
      .replace(/^ {2}(\S+):/, (_, name) => `  ${name}-${count}:`)
      .replace(/mounted-resonance: (\d+)/, (_, value) => `mounted-resonance: ${Number(value) + 10 * count}`),
  );
  return `${head}${list}${more.join('')}${rest}`;
}

/** The plant of the first example with its machine so often that there are about so many points. */
export function manyPumps(points) {
  const text = read('examples/raw-water-pump/plant.yaml');
  const at = text.indexOf('  P-301:\n');
  const machine = `${text.slice(at).trimEnd()}\n`;
  const each = machine.slice(machine.indexOf('    points:\n')).match(/^ {6}\S[^:]*:$/gm).length;
  const count = Math.ceil(points / each);
  const machines = Array.from({ length: count }, (_, index) => machine.replace('  P-301:', `  P-${index + 1}:`));
  return { plant: text.slice(0, at) + machines.join(''), points: count * each };
}
