import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { fromAll, valueIfStated } from '../../quantity/index.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { coverageFactor } from '../../uncertainty/coverage.ts';
import { chainOf, sensitivityAtInput } from '../expected.ts';
import {
  type CheckedTable,
  cannotTell,
  checkKind,
  fails,
  type Judged,
  meets,
  type RivalCause,
  wants,
} from './check-kind.ts';
import { causesOfRatio } from './sensitivity-causes.ts';

/** Slope against the scale factor as designed, and distance of each point from the straight line of that slope, in metres. */
const allowed = { slope: 0.05, deviation: 25.4e-6 } as const;
const fewest = 9;

/** The curve of the installed set on its own steel. */
export const probeCurveCheck = checkKind({
  kind: 'probe-curve',
  title: 'Calibration curve of the probe',
  question: 'Do probe, cable, driver and steel belong together?',
  on: [],
  applies: (designed) => chainOf(designed)?.transducer.linearTravel !== undefined && probe(designed) !== undefined,
  sources: [
    clause(api670, 'scale factor within 5 %, deviation from the straight line within 25.4 µm', 'from memory'),
    clause(tradePractice, 'nine points and more on the real target'),
  ],
  judge: () => [],
  tables: { of: ['probe-curve'], judge },
});

function probe(designed: CheckedTable['designed']) {
  return chainOf(designed)?.transducer.probe;
}

function judge({ designed, table }: CheckedTable): readonly Judged[] {
  if (table.kind !== 'probe-curve') return [];
  const known = fromAll({ sensitivity: sensitivityAtInput(designed) }, (each) => each);
  if (!known.known) return wants(known.missing);
  const { sensitivity } = known.value;
  const range = linearRange(designed);
  const points = table.rows.flatMap(({ values }) => {
    const [gap, volts] = [valueIfStated(values.gap) as number | undefined, valueIfStated(values.voltage)];
    return gap === undefined || volts === undefined ? [] : [{ gap, volts: volts as number }];
  });
  // A driver gives negative volts; people write them with and without the sign.
  const inside = points
    .filter(({ gap }) => range === undefined || (gap >= range.low * (1 - 1e-9) && gap <= range.high * (1 + 1e-9)))
    .map(({ gap, volts }) => ({ gap, volts: Math.abs(volts) }));
  const facts = {
    expected: said`${measured('voltage per displacement', sensitivity)} within the linear range`,
    tolerance: said`slope within ${100 * allowed.slope} %, each point within ${measured('length', allowed.deviation)} of the line`,
    because: 'Gap, position and vibration are all read by this slope.',
  };
  if (inside.length < fewest) {
    return [
      cannotTell({ ...facts, because: said`${inside.length} points lie in the linear range.` }, [
        said`${fewest} or more in even steps over the linear range`,
      ]),
    ];
  }
  const fit = straightLine(inside);
  const ratio = fit.slope / sensitivity;
  const reach = coverageFactor(0.95, inside.length - 2) * fit.slopeError;
  const found = said`${measured('voltage per displacement', fit.slope, 4)}, ${inside.length} points`;
  const interval = measuredSpan('voltage per displacement', { low: fit.slope - reach, high: fit.slope + reach });
  const ofSlope = { ...facts, of: 'slope', found, interval };
  const deviation = deviationFrom(inside, sensitivity);
  const ofLine = {
    ...facts,
    of: 'straightness',
    found: said`up to ${measured('length', deviation.most, 3)} from the line of the designed slope, at ${measured('length', deviation.at, 3)}`,
  };
  return [
    Math.abs(ratio - 1) <= allowed.slope + 1e-9 ? meets(ofSlope) : fails(ofSlope, slopeCauses(ratio)),
    deviation.most <= allowed.deviation + 1e-12
      ? meets(ofLine)
      : fails(ofLine, [
          {
            cause: 'the range ends earlier than stated, or the steel is another one',
            evidence: ofLine.found,
            next: 'Take the curve on a coupon of the very steel of the shaft.',
          },
          {
            cause: 'side view: a shoulder, keyway or second probe too near the tip',
            evidence: ofLine.found,
            next: 'Take the curve with the probe in free space before the same target.',
          },
          {
            cause: 'a reading written down wrongly',
            evidence: ofLine.found,
            next: 'Repeat the steps beside that gap.',
          },
        ]),
  ];
}

function linearRange(designed: CheckedTable['designed']) {
  const values = chainOf(designed)!.parts.transducer.sheet.values as {
    readonly linearRange?: {
      readonly known: boolean;
      readonly value?: { readonly low: number; readonly high: number };
    };
  };
  return values.linearRange?.known === true ? values.linearRange.value : undefined;
}

interface GapPoint {
  readonly gap: number;
  readonly volts: number;
}

function straightLine(points: readonly GapPoint[]) {
  const n = points.length;
  const mean = (of: (point: GapPoint) => number) => points.reduce((sum, each) => sum + of(each), 0) / n;
  const [g, v] = [mean(({ gap }) => gap), mean(({ volts }) => volts)];
  const spread = points.reduce((sum, { gap }) => sum + (gap - g) ** 2, 0);
  const slope = points.reduce((sum, { gap, volts }) => sum + (gap - g) * (volts - v), 0) / spread;
  const left = points.reduce((sum, { gap, volts }) => sum + (volts - v - slope * (gap - g)) ** 2, 0);
  return { slope, slopeError: Math.sqrt(left / (n - 2) / spread) };
}

/** The farthest point from the line of the designed slope that lies best, in metres of gap: half of their span. */
function deviationFrom(points: readonly GapPoint[], sensitivity: number) {
  const off = points.map(({ gap, volts }) => ({ gap, by: volts / sensitivity - gap }));
  const [low, high] = [Math.min(...off.map(({ by }) => by)), Math.max(...off.map(({ by }) => by))];
  const middle = (low + high) / 2;
  const farthest = off.reduce((a, b) => (Math.abs(b.by - middle) > Math.abs(a.by - middle) ? b : a));
  return { most: (high - low) / 2, at: farthest.gap };
}

function slopeCauses(ratio: number): readonly RivalCause[] {
  const evidence = said`${ratio.toPrecision(3)} times the designed slope`;
  return causesOfRatio(ratio, 0.05, [
    {
      cause: 'probe, extension cable and driver are not of one electrical length',
      evidence,
      next: 'Read the lengths printed on probe and cable against the label of the driver.',
    },
    {
      cause: 'another steel than the set was calibrated on',
      evidence,
      next: 'Take the curve on a coupon of both steels.',
    },
    { cause: 'the driver or probe is damaged', evidence, next: 'Exchange one part of the set at a time.' },
  ]);
}
