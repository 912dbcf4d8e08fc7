import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { chainOf, lowerCorner, noiseAtInput } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, wants } from './check-kind.ts';
import { medianRatio } from './noise-floor.ts';

/** The low end may stand this much further above the predicted noise than the middle does. */
const allowed = 4;

/** Whether the noise rises towards low frequencies more steeply than the stages say; integrated, it buries slow lines. */
export const skiSlope = checkKind({
  kind: 'ski-slope',
  title: 'Slope at the low end',
  question: 'Does something slow ride on the signal, that becomes a slope once integrated?',
  on: ['stopped'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  sources: [
    clause(tradePractice, 'a floor at the low end no steeper than the integrated noise; four times where it is'),
  ],
  judge: ({ designed, record }): readonly Judged[] => {
    const { slowDensity, density } = record.measures;
    const known = fromAll(
      {
        slow: slowDensity,
        density,
        noise: noiseAtInput(designed),
        scale: voltsPerNumber(record),
        corner: lowerCorner(designed),
      },
      (each) => each,
    );
    if (!known.known) return wants(known.missing);
    const { slow, density: fine, noise, scale, corner } = known.value;
    const from = Math.max(2 * corner, 3 * slow.resolution);
    const low = { low: from, high: Math.max(5 * from, from + 25 * slow.resolution) };
    const middle = { low: 10 * low.high, high: 0.4 * fine.rate };
    const below = medianRatio(slow, noise, scale, low);
    const above = medianRatio(fine, noise, scale, middle);
    const facts = {
      expected: said`as far above the predicted noise at ${measuredSpan('frequency', low)} as higher up`,
      tolerance: said`up to ${allowed} times: noise at low frequencies differs from piece to piece`,
      because:
        'Integration divides by the frequency: what is slow and does not belong there becomes the largest of all.',
    };
    if (below === undefined || above === undefined || low.high > 0.4 * slow.rate) {
      return [
        cannotTell({ ...facts, because: 'The record holds too few lines at the low end.' }, [
          said`a stopped record of ${measured('time', 25 / Math.max(corner, 0.1))} or more`,
        ]),
      ];
    }
    const ratio = below.ratio / Math.max(above.ratio, 1e-3);
    const reach = Math.hypot(below.spread, above.spread);
    const found = said`${ratio.toPrecision(3)} times as far`;
    const interval = said`${(ratio / (1 + reach)).toPrecision(3)} to ${(ratio * (1 + reach)).toPrecision(3)} times`;
    if (ratio <= allowed) return [meets({ ...facts, found, interval })];
    const evidence = said`the low end stands ${ratio.toPrecision(2)} times too high, the middle does not`;
    return [
      fails({ ...facts, found, interval }, [
        {
          cause: 'the chain was still settling after power came on or after an overload',
          evidence,
          next: 'Wait five time constants of the lower corner and record again.',
        },
        {
          cause: 'temperature of the transducer changes: draught, sun, hot surface',
          evidence,
          next: 'Shield it from the draught and record again.',
        },
        {
          cause: 'a bad contact in connector or cable',
          evidence,
          next: 'Move connector and cable while watching the direct voltage.',
        },
        { cause: 'the mount rocks', evidence, next: 'Press the transducer by hand; check torque and face.' },
      ]),
    ];
  },
});
