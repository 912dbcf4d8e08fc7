import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  appraisal,
  type DesignedPoint,
  design,
  type EventRecord,
  type EventScales,
  frequencyAtState,
  growthCurve,
  type Level,
  level,
  type MachineEvent,
  type Motion,
  magnitudeOf,
  type Prediction,
  Refusal,
  showMeasure,
  simulatedEvent,
  steadyGrowth,
  type WatchingSetPoint,
} from '../../packages/core/src/index.ts';
import { examplePlant, known } from '../reading.ts';

/**
 * A fault that grows for forty days, seen through the chains of reference plant 1. Independent: the days follow by hand
 * from the law of growth and from the response of the loop sensor as the plant's author computed it.
 */
const designed = design(examplePlant('raw-water-pump'), 1);
const machine = designed.machines[0]!;
const [route, loop] = machine.points as [DesignedPoint, DesignedPoint];

const rms = (value: number): Level<Motion> => level('velocity', value / 1000, 'rms');
const line = (name: string, state: string) => known(frequencyAtState(machine.frequencies, name, state));
const steady = (name: string, frequency: number, value: number) => ({
  name,
  frequency,
  growth: growthCurve([{ day: 0, level: rms(value) }]),
});
const growing = (name: string, frequency: number, from: number, to: number) => ({
  name,
  frequency,
  growth: steadyGrowth(rms(from), rms(to), 40),
});
const loopScales: EventScales = {
  loop: { known: true, value: { low: rms(0), high: rms(25) } },
  card: {
    known: true,
    value: { currentAtLow: 0.004, currentAtHigh: 0.02, countsAtLow: 0, countsAtHigh: 32_000 },
  },
};
const watching: readonly WatchingSetPoint[] = (['alert', 'trip'] as const).map((name) => ({
  name,
  does: name,
  level: loop.alarms!.setPoints[name],
}));
const prediction = (point: DesignedPoint): Prediction => point.appraisal!.prediction;
const run = (event: MachineEvent, scales: EventScales = loopScales, point = loop): EventRecord =>
  simulatedEvent(event, prediction(point), watching, scales);

const half = line('pump/half-order', 'lowest');
const once = line('pump/1x', 'lowest');
const looseness: MachineEvent = {
  name: 'looseness at the lowest speed',
  at: loop.point.of,
  days: 40,
  parts: [steady('1x', once, 1.5), growing('half order', half, 0.1, 12)],
};

/** Day on which √(steady² + (gain · growing)²) reaches a level, by hand. */
function dayByHand(set: number, gain: { once: number; half: number }): number {
  const needed = Math.sqrt(set ** 2 - (1.5 * gain.once) ** 2) / gain.half;
  return (40 * Math.log(needed / 0.1)) / Math.log(12 / 0.1);
}

test('independent: the alert through the loop acts on the day found by hand, days after the motion itself', () => {
  const record = run(looseness);
  const [alert, trip] = record.alarms.map(known);
  // Second order, −3 dB at 8 Hz, and at 1000 Hz: 1/√(1 + (f_c/f)⁴).
  const gain = (frequency: number) => 1 / Math.sqrt(1 + (8 / frequency) ** 4) / Math.sqrt(1 + (frequency / 1000) ** 4);
  const gains = { once: gain(once), half: gain(half) };
  expect(gains.half).toBeCloseTo(0.5172, 2);
  expect(alert!.trueDay).toBeCloseTo(dayByHand(3.175, { once: 1, half: 1 }), 2);
  expect(alert!.day).toBeCloseTo(dayByHand(3.175, gains), 1);
  expect(alert!.day! - alert!.trueDay!).toBeGreaterThan(4);
  // 12 mm/s of half order is shown as 6.2 mm/s: the trip, which the motion itself passes, never acts.
  expect(trip!.trueDay).toBeDefined();
  expect(trip!.day).toBeUndefined();
  expect(trip!.atEnd.indicated.value * 1000).toBeCloseTo(Math.hypot(1.5 * gains.once, 12 * gains.half), 6);
});

test('negative: the half order that is missing in the loop value is named, with what is shown and what there is', () => {
  const record = run(looseness);
  expect(known(record.missed).map(({ part, why }) => `${part} ${why}`)).toEqual(['half order read too low']);
  expect(known(record.missed)[0]!.error).toBeCloseTo(-0.4828, 2);
  expect(record.findings.map(({ rule, weight }) => `${rule} ${weight}`)).toEqual([
    'event/alarm-late warns',
    'event/alarm-late blocks-issue',
    'event/part-missed warns',
  ]);
  expect(showMeasure(record.findings[1]!.found)).toMatch(/never acts/);
});

test('independent: the same growth at the shaft speed is shown as it is, within the counts of the card', () => {
  const record = run({ ...looseness, parts: [growing('1x', line('pump/1x', 'highest'), 0.5, 12)] });
  const [alert, trip] = record.alarms.map(known);
  expect(known(record.missed)).toEqual([]);
  expect(record.findings).toEqual([]);
  for (const each of [alert!, trip!]) {
    expect(each.day! - each.trueDay!).toBeLessThan(0.1);
    expect(each.earliest!).toBeLessThan(each.day!);
    expect(each.latest!).toBeGreaterThan(each.day!);
  }
  expect(trip!.atEnd.counts).toBe(Math.round((32_000 * trip!.atEnd.indicated.value * 1000) / 25));
  expect(trip!.day).toBeGreaterThan(alert!.day!);
});

test('negative: a loop in its saturation reads 20.5 mA and no more, whatever the machine does', () => {
  const record = run({ ...looseness, parts: [growing('1x', line('pump/1x', 'highest'), 1, 200)] });
  const trip = known(record.alarms[1]!);
  expect(trip.atEnd.current).toBeCloseTo(0.0205, 9);
  expect(trip.atEnd.truth.value).toBeGreaterThan(0.15);
});

test('independent: bearing lines are seen by the analyst weeks before any overall value moves', () => {
  const frequency = 3 * line('pump-drive-end/inner-ring', 'highest');
  const event: MachineEvent = {
    name: 'spall',
    at: route.point.of,
    days: 40,
    parts: [steady('1x', line('pump/1x', 'highest'), 1.8), growing('3 x inner ring', frequency, 0.000001, 4)],
  };
  const record = run(event, { lines: { spacing: 0.3125, detection: 10 } }, route);
  const alert = known(record.alarms[0]!);
  const seen = known(record.seen).find((each) => each.part === '3 x inner ring')!.day!;
  expect(seen).toBeLessThan(alert.day! - 14);
  // The floor of the line by hand: density of the chain there, √(1.5 · 0.3125 Hz), 10 dB above it, as a level that grows.
  const { noise, response } = prediction(route);
  const floor = (known(noise)(frequency) * Math.sqrt(1.5 * 0.3125)) / (2 * Math.PI * frequency);
  const needed = (floor * Math.sqrt(10)) / magnitudeOf(known(response)(frequency));
  expect(seen).toBeCloseTo((40 * Math.log((needed * 1000) / 0.000001)) / Math.log(4 / 0.000001), 3);
  expect(known(run(event).seen)).toEqual([]);
});

test('negative: a part outside the band of the set point is named, and does not move it', () => {
  const band = { low: 10, high: 1000 };
  const inBand: readonly WatchingSetPoint[] = [
    { name: 'alert', does: 'alert', level: { known: true, value: level('velocity', 0.003175, 'rms', band) } },
  ];
  const record = simulatedEvent(looseness, prediction(loop), inBand, loopScales);
  expect(known(record.missed).map(({ part, why }) => `${part} ${why}`)).toContain('half order outside the band');
  expect(known(record.alarms[0]!).trueDay).toBeUndefined();
});

test('negative: an unknown set point leaves its own day unknown, an unknown response all of them', () => {
  const unknown: WatchingSetPoint = {
    name: 'alert',
    does: 'alert',
    level: { known: false, missing: [{ of: 'P-301', what: 'baseline' }] },
  };
  const record = simulatedEvent(looseness, prediction(loop), [unknown, watching[1]!], loopScales);
  expect(record.alarms.map((each) => each.known)).toEqual([false, true]);
  const response = { known: false, missing: [{ of: 'LPV-25', what: 'low corner' }] } as const;
  const blind = simulatedEvent(looseness, { ...prediction(loop), response }, watching, loopScales);
  for (const each of [...blind.alarms, blind.missed]) {
    expect(each).toMatchObject({ known: false, missing: [{ what: 'low corner' }] });
  }
  expect(() => growthCurve([])).toThrow(Refusal);
  expect(() => growthCurve([{ day: 0, level: rms(0) }])).toThrow(Refusal);
  expect(() =>
    growthCurve([
      { day: 1, level: rms(1) },
      { day: 1, level: rms(2) },
    ]),
  ).toThrow(Refusal);
});

test('law: a higher set point, a lower response or slower growth never makes an alarm earlier', () => {
  const day = (to: number, set: number, point = loop) => {
    const event = { ...looseness, parts: [growing('1x', once, 0.2, to)] };
    const at: WatchingSetPoint = { name: 'alert', does: 'alert', level: { known: true, value: rms(set) } };
    return known(simulatedEvent(event, prediction(point), [at]).alarms[0]!).day ?? Number.POSITIVE_INFINITY;
  };
  fc.assert(
    fc.property(
      fc.double({ min: 2, max: 50, noNaN: true }),
      fc.double({ min: 1, max: 4, noNaN: true }),
      fc.double({ min: 0.3, max: 10, noNaN: true }),
      (to, faster, set) => {
        const reference = day(to, set);
        expect(day(to * faster, set)).toBeLessThanOrEqual(reference + 1e-3);
        expect(day(to, set * faster)).toBeGreaterThanOrEqual(reference - 1e-3);
      },
    ),
    { numRuns: 30 },
  );
});

test('law: the record is the same each time, and judging anew changes nothing', () => {
  const again = appraisal(loop.point, { ...loop.stated.way!, ...loop.stated.chosen! }, designed.plant.policy);
  expect(simulatedEvent(looseness, again.prediction, watching, loopScales)).toEqual(run(looseness));
});
