import { expect, test } from 'vitest';
import { type FaultKind, faultKinds, level, rehearsedMotion } from '../../packages/core/src/index.ts';
import { known } from '../reading.ts';
import { chainedPoints, silent } from './chains.ts';

const places = chainedPoints();

/** A point of the examples whose machine has a place for a fault; the point that looks at the shaft where only that shows it. */
function placeFor(kind: FaultKind) {
  const ofShaft = kind.kind === 'scratch' || kind.kind === 'runout';
  for (const { machine, point } of places) {
    const { train } = machine.stated;
    const relative = point.appraisal!.prediction.chain.transducer.reference === 'shaft-relative';
    if (ofShaft && !relative) continue;
    const at =
      kind.at === 'shaft'
        ? train.shafts[0]
        : train.elements.find((each) => (kind.at as readonly string[]).includes(each.kind))?.name;
    if (at !== undefined) return { machine, point, at };
  }
  return undefined;
}

test.each((faultKinds as readonly FaultKind[]).map((kind) => [kind.kind, kind] as const))(
  'every fault can be put in and moves something: %s',
  (_word, kind) => {
    const place = placeFor(kind);
    if (place === undefined) throw new Error(`no example has a place for ${kind.kind}`);
    const size = kind.example.includes('um')
      ? level('displacement', 20e-6, 'peak-to-peak')
      : kind.example.includes(' g ')
        ? level('acceleration', 9.80665, 'peak')
        : level('velocity', 3e-3, 'rms');
    const motion = known(
      rehearsedMotion(place.machine, place.point, {
        ...silent,
        seconds: 2,
        rate: 51_200,
        course: { is: 'steady', at: 'highest' },
        faults: [{ kind: kind.kind, at: place.at, size }],
      }),
    );
    expect(motion.contents.length).toBeGreaterThan(0);
    expect(Math.max(...motion.samples.map(Math.abs))).toBeGreaterThan(0);
  },
);
