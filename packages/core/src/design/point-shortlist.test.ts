import { expect, test } from 'vitest';
import { examplePlant } from '../../../../evidence/reading.ts';
import { outcomes } from '../chain/rules/rule.ts';
import { type DesignedPoint, design } from './design.ts';
import { pointShortlist } from './point-shortlist.ts';

const designed = design(examplePlant('raw-water-pump'), 1);
const { plant } = designed;
const points = designed.machines.flatMap((machine) => machine.points);
const named = points.map((each) => [each.stated.statement.name, each] as const);

const pair = (transducer: string, mount: string) => `${transducer} on ${mount}`;
const candidates = (each: DesignedPoint) =>
  pointShortlist(plant, each).map((row) => pair(row.transducer.name, row.mount.name));

test.each(named)('law, %s: every transducer to be compared on every mount, each once', (_, each) => {
  const { transducers, mounts } = each.stated.compared;
  const all = transducers.flatMap((one) => mounts.map((other) => pair(one.name, other.name)));
  expect(all.length).toBeGreaterThan(1);
  expect([...candidates(each)].sort()).toEqual(all.sort());
});

test.each(named)(
  'law, %s: the better outcome stands above the worse, and of the failing the fewer failures',
  (_, each) => {
    const rows = pointShortlist(plant, each);
    for (const [index, row] of rows.slice(1).entries()) {
      const above = rows[index]!;
      const better = outcomes.indexOf(above.appraisal.outcome) - outcomes.indexOf(row.appraisal.outcome);
      expect(better).toBeGreaterThanOrEqual(0);
      if (better === 0) expect(above.failures).toBeLessThanOrEqual(row.failures);
      if (better === 0 && above.failures === row.failures) {
        expect(above.leastMargin).toBeGreaterThanOrEqual(row.leastMargin);
      }
    }
  },
);

test.each(named)('law, %s: the chosen chain is judged in the list as it is in the design', (_, each) => {
  const { transducer, mount } = each.stated.chosen!;
  const row = pointShortlist(plant, each).find(
    (one) => one.transducer.name === transducer.name && one.mount.name === mount.name,
  );
  expect(row!.appraisal.judgements).toEqual(each.appraisal!.judgements);
  expect(row!.appraisal.outcome).toBe(each.appraisal!.outcome);
});

test('law: a stricter policy of the plant reaches the list: no margin for detection grows', () => {
  const [, each] = named[0]!;
  const stricter = { ...plant, policy: { ...plant.policy, detection: plant.policy.detection + 20 } };
  const marginOf = (of: typeof plant) =>
    new Map(
      pointShortlist(of, each).map((row) => [
        pair(row.transducer.name, row.mount.name),
        row.appraisal.judgements
          .filter(({ rule }) => rule === 'chain/signal-to-noise')
          .map((judgement) => judgement.margin ?? 0),
      ]),
    );
  const [before, after] = [marginOf(plant), marginOf(stricter)];
  let lower = 0;
  for (const [candidate, margins] of before) {
    for (const [index, margin] of margins.entries()) {
      expect(after.get(candidate)![index]).toBeLessThanOrEqual(margin);
      if (after.get(candidate)![index]! < margin) lower++;
    }
  }
  expect(lower).toBeGreaterThan(0);
});

test('negative: where the way to the input is not stated there is nothing to compare, and nothing is assumed', () => {
  const [, each] = named[0]!;
  expect(pointShortlist(plant, { ...each, stated: { ...each.stated, way: undefined } })).toEqual([]);
});
