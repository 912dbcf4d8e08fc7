import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pointAddress } from '../app/address.ts';
import type { PointRow } from '../engine/views.ts';
import { type Seen, stepAfter, walkPoint, walkSteps } from './walk-steps.ts';

const row = (name: string, mount: string, transducer = 'ACC-100'): PointRow =>
  ({ of: `P-1/${name}`, machine: 'P-1', name, mount, transducer }) as PointRow;

test('the point of the demo goes first, then one on a stud, then any with a chain; one without a chain never', () => {
  const demo = row('pump-drive-end-horizontal', 'magnet-2pole');
  const [stud, pad, bare] = [row('a', 'stud'), row('b', 'epoxy-pad'), row('c', '', '')];
  expect(walkPoint({ points: [bare, pad, stud, demo] })).toBe(demo);
  expect(walkPoint({ points: [bare, pad, stud] })).toBe(stud);
  expect(walkPoint({ points: [bare, pad] })).toBe(pad);
  expect(walkPoint({ points: [bare] })).toBeUndefined();
});

test('a step goes on only when it was really done', () => {
  const at = (place: string, mount: string): Seen => ({ place, row: row('a', mount), mount: 'stud' });
  const point = pointAddress('P-1/a');
  expect(stepAfter(0, at('/', 'stud'))).toBe(0);
  expect(stepAfter(0, at(point, 'stud'))).toBe(1);
  expect(stepAfter(1, at(point, 'stud'))).toBe(1);
  expect(stepAfter(1, at(point, 'magnet-2pole'))).toBe(2);
  expect(stepAfter(2, at(point, 'magnet-2pole'))).toBe(2);
  expect(stepAfter(2, at(point, 'stud'))).toBe(3);
  expect(stepAfter(3, at(point, 'stud'))).toBe(3);
  expect(stepAfter(3, at('/findings', 'stud'))).toBe(4);
});

test('law: whatever is seen, a walk goes on by one step or stays, and ends after the last', () => {
  const places = fc.constantFrom('/', '/findings', pointAddress('P-1/a'));
  const mounts = fc.constantFrom('', 'stud', 'magnet-2pole');
  fc.assert(
    fc.property(fc.nat({ max: walkSteps.length }), places, mounts, (step, place, mount) => {
      const after = stepAfter(step, { place, row: row('a', mount), mount: 'stud' });
      expect([step, step + 1]).toContain(after);
      expect(after).toBeLessThanOrEqual(walkSteps.length);
    }),
  );
});
