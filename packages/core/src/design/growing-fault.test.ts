import fc from 'fast-check';
import { expect, test } from 'vitest';
import { examplePlant, known } from '../../../../evidence/reading.ts';
import type { Prediction } from '../chain/prediction.ts';
import type { Target } from '../demand/target.ts';
import { showMeasure } from '../finding/measure.ts';
import { answer, type Level, level, type Motion, type Stated, stated, unanswered } from '../quantity/index.ts';
import { type DesignedPoint, design } from './design.ts';
import { type GrowingFault, growingFault, type WatchingPoint } from './growing-fault.ts';

const designed = design(examplePlant('raw-water-pump'), 1);
const [route, loop] = designed.machines[0]!.points as [DesignedPoint, DesignedPoint];
const days = 40;
const band = { low: 2, high: 1000 };
const rms = (value: number): Level<Motion> => level('velocity', value / 1000, 'rms');

/** Shows every motion as it is, and adds nothing. */
const flat: Prediction = {
  ...route.appraisal!.prediction,
  response: answer(() => ({ re: 1, im: 0 })),
  noise: answer(() => 0),
};
const through = (prediction: Prediction): WatchingPoint => ({
  point: loop.point,
  alarms: loop.alarms!,
  prediction,
  policy: designed.plant.policy,
});

/** A flat chain with one alert, and a baseline where one is given. */
function watching(set: number, baseline?: number): WatchingPoint {
  const { alarms, ...rest } = through(flat);
  const row = {
    name: 'alert',
    level: answer(level('velocity', set / 1000, 'rms', band)),
    because: 'set for this test',
  };
  const of: Stated<Level<Motion>> = baseline === undefined ? { known: false } : stated(rms(baseline), 'measured');
  return { ...rest, alarms: { ...alarms, register: [row], stated: { ...alarms.stated, baseline: of } } };
}

const targetOf = ({ point }: DesignedPoint, name: string): Target => point.targets.find((each) => each.name === name)!;
const line = targetOf(route, 'bearing lines');
const from = (smallest: Level<Motion>, largest: Level<Motion>, target = line): Target => ({
  ...target,
  smallest: answer(smallest),
  largest: answer(largest),
});
const grows = (watched: WatchingPoint, target: Target): GrowingFault => known(growingFault(watched, { target, days }));
const alertDay = (fault: GrowingFault) => known(fault.alarms[0]!.acts).day;

test('law: on a flat chain an alarm acts on day days · ln(set point/smallest)/ln(largest/smallest)', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.001, max: 0.5, noNaN: true }),
      fc.double({ min: 0.6, max: 9, noNaN: true }),
      fc.double({ min: 10, max: 100, noNaN: true }),
      (smallest, set, largest) => {
        const found = alertDay(grows(watching(set), from(rms(smallest), rms(largest))));
        expect(found).toBeCloseTo((days * Math.log(set / smallest)) / Math.log(largest / smallest), 4);
      },
    ),
    { numRuns: 40 },
  );
});

test('law: the higher the set point, the later the alarm; beyond the largest level it never acts, and says why', () => {
  const target = from(rms(0.1), rms(10));
  const sets = [0.2, 0.5, 2, 5, 9.9].map((set) => alertDay(grows(watching(set), target))!);
  expect(sets.toSorted((a, b) => a - b)).toEqual(sets);
  expect(new Set(sets).size).toBe(sets.length);
  const [never] = grows(watching(10.1), target).alarms;
  expect(known(never!.acts).day).toBeUndefined();
  expect(showMeasure(never!.never!)).toMatch(
    /^at the end the motion in its band is 10 mm\/s rms .*below the set point$/,
  );
});

test('law: both ends are brought to one motion and detector as a sine, whatever they are stated in', () => {
  const frequency = known(line.largestAt);
  const omega = 2 * Math.PI * frequency;
  const same = from(level('acceleration', 0.0001 * Math.SQRT2 * omega, 'peak'), rms(10));
  expect(alertDay(grows(watching(2), same))).toBeCloseTo((days * Math.log(2 / 0.1)) / Math.log(10 / 0.1), 4);
  expect(grows(watching(2), same).to).toMatchObject({ quantity: 'acceleration', detector: 'peak' });
});

test('law: a baseline adds by energy, so the fault alone need only reach √(set point² − baseline²)', () => {
  const target = from(rms(0.1), rms(10));
  const needed = Math.sqrt(3.175 ** 2 - 1.9 ** 2);
  const withIt = alertDay(grows(watching(3.175, 1.9), target))!;
  expect(withIt).toBeCloseTo((days * Math.log(needed / 0.1)) / Math.log(10 / 0.1), 4);
  expect(withIt).toBeLessThan(alertDay(grows(watching(3.175), target))!);
  expect(alertDay(grows(watching(3.175, 3.2), target))).toBe(0);
});

test('negative: an overall value holds the baseline already; an unknown baseline is said, not put at zero unseen', () => {
  const overall = grows(watching(3.175, 1.9), targetOf(loop, 'overall velocity'));
  expect(overall.baseline.part).toBeUndefined();
  expect(alertDay(overall)).toBeCloseTo((days * Math.log(3.175 / 0.5)) / Math.log(25 / 0.5), 4);
  expect(showMeasure(overall.notes[0]!)).toContain('is all the motion there is');
  expect(showMeasure(grows(watching(3.175), line).notes[0]!)).toContain('baseline is unknown and not added');
});

test('negative: bearing bursts lie outside the band of the loop, so no alarm ever acts on them, and it says so', () => {
  const target = targetOf(route, 'bearing bursts');
  const watched = through(loop.appraisal!.prediction);
  const fault = known(growingFault(watched, { target, days, statedAt: route.point.of }));
  expect(fault.alarms.map(({ row }) => row.name)).toEqual(['alert', 'trip']);
  for (const { acts, never } of fault.alarms) {
    expect(known(acts).day).toBeUndefined();
    expect(showMeasure(never!)).toMatch(/^'bearing bursts' at .* lies outside its band, 2\.\.1000 Hz$/);
  }
  expect(fault.notes.map((each) => showMeasure(each)).join(' ')).toContain(`as it is at ${route.point.of}`);
});

test('negative: a chain that shows too little keeps an alarm from acting, and says how much it shows', () => {
  const deaf = { ...flat, response: answer(() => ({ re: 0.1, im: 0 })) };
  const { alarms } = grows({ ...watching(2), prediction: deaf }, from(rms(0.1), rms(10)));
  expect(known(alarms[0]!.acts).trueDay).toBeDefined();
  expect(showMeasure(alarms[0]!.never!)).toMatch(/^of 10 mm\/s rms .* at the end the chain shows 1 mm\/s rms/);
});

test('negative: what is not known, does not swing, does not grow or is not sensed gives no day, by name', () => {
  const missing = (target: Target) => {
    const found = growingFault(watching(3), { target, days });
    return found.known ? [] : found.missing.map((each) => each.what);
  };
  const unknown = unanswered([{ of: 'point', what: 'smallest level' }]);
  expect(missing({ ...line, smallest: unknown })).toEqual(['smallest level']);
  expect(missing({ ...line, largestAt: unanswered([{ of: 'point', what: 'line frequency' }]) })).toEqual([
    'line frequency',
  ]);
  expect(missing(from(rms(2), rms(1)))).toEqual(['largest level above the smallest']);
  expect(missing({ ...line, observable: { ...line.observable, atRest: true } })).toEqual([
    'frequency (a position does not swing)',
  ]);
  expect(missing({ ...line, reference: 'shaft-relative' })).toEqual(['size as casing motion']);
});
