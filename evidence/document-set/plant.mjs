// A plant of as many points as asked for, invented and always the same for the same seed: `node plant.mjs 500 > plant.yaml`.
import { resolve } from 'node:path';
import { inventedMachines } from './machines.mjs';

/** The text of a plant file with exactly so many measuring points. */
export function generatedPlant(points, seed = 1) {
  const draw = drawing(seed);
  const machines = [];
  let left = points;
  for (let at = 0; left > 0; at++) {
    const [letters, machine] = inventedMachines[at % inventedMachines.length];
    const { title, head, points: all } = machine(draw);
    const kept = all.slice(0, left);
    left -= kept.length;
    const texts = kept.map(({ name, text }) => `\n      ${name}:${text}`);
    machines.push(`\n  ${letters}-${1001 + at}:\n    title: ${title}${head}\n    points:${texts.join('')}`);
  }
  return `${head(points)}\nmachines:${machines.join('')}\n`;
}

function head(points) {
  return `# Generated: an invented plant of ${points} measuring points.
soundpost: plant
version: 1

plant:
  name: Tarnholm Works, ${points} measuring points
  owner: Tarnholm Works
  project: Vibration monitoring of the whole works
  revision: A
  date: 2026-11-25

catalogues: [generic]

allowances:
  calibration: { value: 1.5 %, status: certificate, source: certificate of the individual calibration }
  reference-temperature: { value: 23 °C, status: certificate, source: certificate of the individual calibration }
  mounting: { value: 2 %, status: assumed, source: stud on a spot face }
  input-gain: { value: 1 %, status: data sheet, source: data sheet of the collector }
  cross-motion: { value: 1, status: assumed, source: motion across as large as along }
  response-residual: { value: 0.5 %, status: assumed, source: after correction of the corners }
`;
}

/** Numbers that look random and are the same for the same seed: mulberry32, from memory; good enough to vary names. */
function drawing(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const tags = new Map();
  return {
    whole: (low, high) => low + Math.floor(next() * (high - low + 1)),
    fixed: (low, high, places) => (low + next() * (high - low)).toFixed(places),
    one: (...all) => all[Math.floor(next() * all.length)],
    /** `ZB-201/1`: each once, eight channels to a module. */
    tag: (letters) => {
      const at = tags.get(letters) ?? 0;
      tags.set(letters, at + 1);
      return `${letters}-${201 + Math.floor(at / 8)}/${1 + (at % 8)}`;
    },
  };
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === import.meta.filename) {
  const [points = '500', seed = '1'] = process.argv.slice(2);
  process.stdout.write(generatedPlant(Number(points), Number(seed)));
}
