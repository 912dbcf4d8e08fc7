import { expect, test } from 'vitest';
import { changed, input, parts, point, transducer } from '../../../../evidence/bench.ts';
import { measuringChain } from '../chain/chain.ts';
import { type Answer, fieldOf, type Level, notStated, pointDecimals, stated } from '../quantity/index.ts';
import { type GroundLoop, groundLoops } from './ground-loops.ts';
import { plantWiring, type WiredPoint, wiringSheet } from './index.ts';
import { loopHum } from './loop-hum.ts';

type Entries = Readonly<Partial<Record<keyof typeof wiringSheet, string>>>;

/** A grounded accelerometer of 100 mV/g on an earthed rack: one loop, through its return. */
function grounded(says: Entries, name = 'bench', sensitivity = '100 mV/g'): WiredPoint {
  const at = { ...point({ line: { see: 'line', at: '49 Hz', spacing: '0.5 Hz' } }), of: `M-1/${name}`, name };
  const values = Object.fromEntries(
    Object.entries(says).map(([key, text]) => {
      const field = fieldOf(wiringSheet[key as keyof typeof wiringSheet]);
      return [key, text === 'unknown' ? notStated : stated(field.read(text, pointDecimals), text)];
    }),
  );
  return {
    point: { ...at, machine: 'M-1', installation: 'online' },
    chain: measuringChain(
      parts({ transducer: changed(transducer('ACC-50M'), { sensitivity }), input: input('ONL-24') }),
    ),
    wiring: { of: at.of, values: values as NonNullable<WiredPoint['wiring']>['values'] },
  };
}

function humOf(...points: readonly WiredPoint[]) {
  const { loops } = plantWiring(points, undefined);
  return loops.flatMap((loop) => loopHum(loop, points));
}

function known<T>(each: Answer<T>): T {
  if (!each.known) throw new Error(`not known: ${JSON.stringify(each.missing)}`);
  return each.value;
}

const velocity = (each: Answer<Level<'velocity'>>) => known(each).value;

test('printed: each millivolt at 50 Hz on 100 mV/g reads as 0.31 mm/s rms (practice of the trade)', () => {
  const [hum, ...more] = humOf(grounded({ mains: '50 Hz' }));
  expect(more).toEqual([]);
  expect(hum!.point).toBe('M-1/bench');
  expect(known(hum!.perMillivolt).detector).toBe('rms');
  // Half a unit of the last digit printed.
  expect(Math.abs(velocity(hum!.perMillivolt) * 1000 - 0.31)).toBeLessThan(0.005);
});

test('law: what is stated between the earths is so many millivolts, and keeps its detector', () => {
  for (const [typed, millivolts, detector] of [
    ['20 mV rms', 20, 'rms'],
    ['0.3 V peak', 300, 'peak'],
  ] as const) {
    const [hum] = humOf(grounded({ mains: '50 Hz', earthVoltage: typed }));
    expect(velocity(hum!.stated) / velocity(hum!.perMillivolt)).toBeCloseTo(millivolts, 9);
    expect(known(hum!.stated).detector).toBe(detector);
  }
});

test('law: twice the sensitivity reads half, and 60 Hz reads 50/60 of 50 Hz', () => {
  const read = (mains: string, sensitivity: string) =>
    velocity(humOf(grounded({ mains }, 'bench', sensitivity))[0]!.perMillivolt);
  expect(read('50 Hz', '100 mV/g') / read('50 Hz', '200 mV/g')).toBeCloseTo(2, 9);
  expect(read('60 Hz', '100 mV/g') / read('50 Hz', '100 mV/g')).toBeCloseTo(50 / 60, 9);
});

test('law: a loop tells of the points it passes and of no other', () => {
  const points = [grounded({ mains: '50 Hz' }, 'one'), grounded({ mains: '50 Hz' }, 'two')];
  const { loops } = plantWiring(points, undefined);
  expect(loops).toHaveLength(2);
  for (const loop of loops) expect(loopHum(loop, points).map((each) => each.point)).toEqual(loop.points);
});

test('negative: what is not stated is named, and what does not depend on it is still told', () => {
  const missing = (each: Answer<unknown>) => (each.known ? [] : each.missing.map(({ what }) => what));
  const [noVoltage] = humOf(grounded({ mains: '50 Hz' }));
  expect(noVoltage!.perMillivolt.known).toBe(true);
  expect(missing(noVoltage!.stated)).toEqual(['voltage between the earths']);
  const [noMains] = humOf(grounded({ earthVoltage: '20 mV rms', mains: 'unknown' }));
  expect(missing(noMains!.perMillivolt)).toEqual(['mains frequency']);
  expect(missing(noMains!.stated)).toEqual(['mains frequency']);
  const [deaf] = humOf(grounded({ mains: '50 Hz', earthVoltage: '20 mV rms' }, 'bench', 'unknown'));
  expect(missing(deaf!.perMillivolt)).toEqual(['sensitivity']);
});

test('negative: a loop of screens alone adds nothing to a signal that could be told', () => {
  const isolated = (name: string): WiredPoint => {
    const { wiring, ...rest } = grounded({ mains: '50 Hz', screenEarthed: 'both' }, name);
    const chain = measuringChain(parts({ transducer: transducer('ACC-100'), input: input('ONL-24') }));
    return { ...rest, chain, ...(wiring === undefined ? {} : { wiring }) };
  };
  const points = [isolated('bench')];
  const { graph } = plantWiring(points, undefined);
  const loops: readonly GroundLoop[] = groundLoops(graph, points);
  expect(loops.map((each) => each.through)).toEqual(['screen']);
  expect(loops.flatMap((loop) => loopHum(loop, points))).toEqual([]);
});
