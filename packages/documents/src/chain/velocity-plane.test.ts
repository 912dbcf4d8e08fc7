import { level, standardGravity } from '@soundpost/core';
import { expect, test } from 'vitest';
import { velocityOf } from './amplitude-content.ts';
import { slantedFamily, velocityPlane } from './velocity-plane.ts';

const content = {
  marks: [],
  notDrawn: [],
  frequencies: { low: 1, high: 10_000 },
  floor: undefined,
  ceilings: [],
  features: [],
};
const box = { x: 60, y: 40, width: 600, height: 480 };

test('printed: 4.5 mm/s rms at 25 Hz, 81.03 µm pp and 0.07208 g rms are one place on the chart (computed by hand elsewhere)', () => {
  const velocity = velocityOf(level('velocity', 0.0045, 'rms'), 25);
  expect(velocityOf(level('displacement', 81.03e-6, 'peak-to-peak'), 25) / velocity).toBeCloseTo(1, 4);
  expect(velocityOf(level('acceleration', 0.07208 * standardGravity, 'rms'), 25) / velocity).toBeCloseTo(1, 4);
});

test('printed: 1 g peak is 156.078 mm/s peak at 10 Hz and 1.56078 at 1000 Hz (computed by hand elsewhere)', () => {
  const one = level('acceleration', standardGravity, 'peak');
  expect(velocityOf(one, 10) * Math.SQRT2 * 1000).toBeCloseTo(156.078, 3);
  expect(velocityOf(one, 1000) * Math.SQRT2 * 1000).toBeCloseTo(1.56078, 5);
});

test('law: lines of one acceleration fall by a decade of velocity for each decade of frequency, of one displacement rise so', () => {
  const plane = velocityPlane(content, box, 12, {});
  const decade = { x: plane.x.at(10) - plane.x.at(1), y: plane.y.at(1e-3) - plane.y.at(1e-2) };
  for (const [family, sense] of [
    ['acceleration', 1],
    ['displacement', -1],
  ] as const) {
    const lines = slantedFamily(family, plane, {}, 'wide').filter((mark) => mark.is === 'polyline');
    expect(lines.length).toBeGreaterThan(3);
    for (const { points } of lines) {
      const [[x1, y1], [x2, y2]] = [points[0]!, points.at(-1)!];
      expect((y2 - y1) / decade.y / ((x2 - x1) / decade.x)).toBeCloseTo(sense, 6);
    }
  }
});

test('an axis in another unit moves no level: only its numbers change', () => {
  const [metric, us] = [velocityPlane(content, box, 12, {}), velocityPlane(content, box, 12, { units: 'us' })];
  const inch = us.y.ticks.find((tick) => tick.value === 1)!;
  expect(us.y.at(0.0254)).toBeCloseTo(inch.at, 6);
  expect(metric.y.at(0.001)).toBeCloseTo(metric.y.ticks.find((tick) => tick.value === 1)!.at, 6);
});
