import { expect, test } from 'vitest';
import { asMeasured, occasionOf } from '../../packages/core/src/acceptance/testing/as-measured.ts';
import { showMeasure } from '../../packages/core/src/index.ts';
import { checked, recordedPoints, rehearsed, running, speedOf } from './healthy.ts';

const places = recordedPoints();

/** A little broadband motion, as every machine has, well below what must be seen. */
const background = [
  { name: 'flow', level: { quantity: 'acceleration', value: 0.05, detector: 'rms' }, band: { low: 5, high: 9000 } },
] as const;

/** How far the gap of a mark of each turn was set from that of the data sheet, in volts. */
function setOff({ point }: (typeof places)[number]): number {
  const mark = point.stated.probes?.find((each) => each.kind === 'once-per-turn');
  const travel = point.appraisal!.prediction.chain.transducer.linearTravel;
  return mark?.kind === 'once-per-turn' && mark.sheet.values.gapVoltage.known && travel?.known === true
    ? mark.sheet.values.gapVoltage.value - travel.value.set!.voltage
    : 0;
}

test('there are points to be recorded', () => {
  expect(places.length).toBeGreaterThanOrEqual(6);
});

// Many draws of fewer chains are counted by the campaign of rates; here every point of every example stands once.
test.each(places.map((place) => [place.name, place] as const))(
  'law: a healthy record of %s raises no fault',
  (_name, place) => {
    const seed = 1;
    const speed = speedOf(place.machine, place.point);
    const casing = place.point.appraisal!.prediction.chain.transducer.reference === 'casing';
    const run = rehearsed(place, {
      seed,
      course: { is: 'steady', at: 'highest' },
      background: casing ? background : [],
    });
    const still = rehearsed(place, { seed: seed + 100, healthy: 0, course: { is: 'standstill' } });
    const rest = rehearsed(
      place,
      { seed: seed + 200, seconds: 4, healthy: 0, course: { is: 'standstill' } },
      { coupling: 'direct' },
    );
    const results = checked(place, [
      running(speed, run),
      asMeasured(still, occasionOf('stopped')),
      asMeasured({ ...rest, volts: rest.volts.map((each) => each + setOff(place)) }, occasionOf('at-rest')),
    ]);
    const fails = results.filter(({ verdict }) => verdict === 'fails');
    expect(
      fails.map(({ check, expected, found }) => `${check}: ${showMeasure(expected)} / ${showMeasure(found)}`),
    ).toEqual([]);
    expect(results.some(({ verdict }) => verdict === 'meets')).toBe(true);
  },
  120_000,
);
