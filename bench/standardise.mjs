import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { mixedIntegerModel, preparedKeeping, standardisedPlant } from '@soundpost/core';
import { solveAside } from '@soundpost/solver';
import { rounded } from './spread.mjs';

/** The reference may take so long, as the issue of this bench says; ours a fifth of it. */
const referenceSeconds = 180;
const types = 400;
const waysEach = 40;

const cases = [
  { of: '2,000 points of 150 kinds', kinds: 150, pointsEach: [1, 26], keeping: 500 },
  { of: '10,000 points of 150 kinds', kinds: 150, pointsEach: [1, 132], keeping: 500 },
  { of: '2,000 unlike points', kinds: 2000, pointsEach: [1, 1], keeping: 500 },
  { of: '10,000 unlike points', kinds: 10_000, pointsEach: [1, 1], keeping: 2000 },
];

/** Which part numbers a plant keeps, against scipy.optimize.milp, which runs HiGHS of the machine. */
export async function measured() {
  const python = ['/usr/bin/python3', 'python3'].find(
    (each) => spawnSync(each, ['-c', 'from scipy.optimize import milp']).status === 0,
  );
  if (python === undefined) return { notRun: 'python3 with scipy 1.9 or newer is not here' };
  const folder = mkdtempSync(join(tmpdir(), 'standardise-'));
  const rows = {};
  try {
    for (const each of cases) {
      const problem = plantOf(each);
      const ours = await timed(() => solvedHere(problem));
      const file = join(folder, 'plant.json');
      writeFileSync(file, JSON.stringify({ seconds: referenceSeconds, ...problem }));
      const run = spawnSync(python, [join(import.meta.dirname, 'standardise.py'), file], {
        encoding: 'utf8',
        maxBuffer: 1e8,
      });
      if (run.status !== 0) return { notRun: run.stderr };
      const reference = JSON.parse(run.stdout);
      rows[each.of] = row(ours, reference);
      console.log(each.of, rows[each.of]);
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
  return { unit: 's; gaps as shares of the cost', types, waysEach, referenceSeconds, rows };
}

function row({ seconds, result }, reference) {
  const bothProven = result.gap === 0 && reference.proven;
  if (bothProven && Math.abs(result.cost / reference.cost - 1) > 1e-7) {
    throw new Error(`two optima of one plant: ${result.cost} here, ${reference.cost} there`);
  }
  return {
    seconds: rounded(seconds),
    proof: result.proof.by,
    gap: Number(result.gap.toPrecision(3)),
    keptTypes: result.kept.length,
    referenceSeconds: rounded(reference.seconds),
    referenceProven: reference.proven,
    referenceGap: reference.gap === null ? null : Number(reference.gap.toPrecision(3)),
    costOverReference: reference.cost === null ? null : Number((result.cost / reference.cost).toPrecision(8)),
    ratio: rounded(reference.seconds / seconds),
  };
}

async function timed(work) {
  const began = performance.now();
  const result = await work();
  return { seconds: (performance.now() - began) / 1000, result };
}

async function solvedHere(problem) {
  const prepared = preparedKeeping(problem, problem.requirements.length > 5000 ? 700 : 1500);
  const alone = standardisedPlant(prepared);
  // A gap of one per mille is not worth minutes of proving; unlike points without end do not occur in plants.
  if (alone.gap === 0 || problem.requirements.length > 5000) return alone;
  const model = mixedIntegerModel(prepared.problem, prepared.left);
  const solved = await solveAside({ text: model.text, seconds: 60, start: model.values(prepared.choice) });
  return standardisedPlant(prepared, {
    choice: model.choice((column) => solved.values[column] ?? 0),
    bound: solved.bound,
    proven: solved.ended === 'optimal',
    name: solved.by,
  });
}

/** Prices, kinds of points and ways of a generator; the same plant every time. */
function plantOf({ kinds, pointsEach: [low, high], keeping }) {
  let state = 12345;
  const random = () => {
    state = (state * 1664525 + 1013904223) >>> 0;
    return state / 4294967296;
  };
  const list = Array.from({ length: types }, (_, k) => ({
    name: `T${k}`,
    price: Math.round(50 + 450 * random()),
    keeping: Math.round(keeping * (0.5 + random())),
    failuresPerLeadTime: 0,
    inStock: 0,
    rule: 'free',
  }));
  const requirements = Array.from({ length: kinds }, (_, r) => {
    const parts = new Set();
    while (parts.size < waysEach) parts.add(Math.floor(random() * types));
    const points = low + Math.floor(random() * (high - low + 1));
    return {
      name: `R${r}`,
      points: Array.from({ length: points }, (_, index) => `R${r}/${index}`),
      ways: [...parts].map((k) => ({ name: `T${k}`, parts: [k], beside: Math.round(100 * random()) })),
    };
  });
  return { types: list, requirements, serviceLevel: 0.95 };
}
