import { measured, measuredLevel } from '../../finding/measure.ts';
import { asMotion, asSineDetector, fromAll, type Level, type Motion, valueIfStated } from '../../quantity/index.ts';
import { toneNear } from '../../signal/measures/tone.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import { gainAt, motionPerNumber } from '../expected.ts';
import { recordName } from '../measured-record.ts';
import { motionUnits } from './motion-units.ts';
import { axisFor, type Picture } from './picture.ts';

const periods = 4;

/** Some periods of a calibrator as the channel reads them, beside the peaks that its level has. */
export function tonePicture({ designed, record }: CheckedRecord): readonly Picture[] {
  const { occasion, measures } = record;
  if (occasion.kind !== 'calibrator') return [];
  const frequency = valueIfStated(occasion.sheet.values.frequency) as number | undefined;
  const level = valueIfStated(occasion.sheet.values.level) as Level<Motion> | undefined;
  const known = fromAll(
    { rate: measures.rate, per: motionPerNumber(designed, record), gain: gainAt(designed) },
    (each) => each,
  );
  if (!known.known || frequency === undefined || level === undefined) return [];
  const { rate, per, gain } = known.value;
  const { unit, factor } = motionUnits[per.motion];
  const asRead = asMotion(asSineDetector(level, 'peak'), per.motion, frequency);
  const peak = asRead.value * gain(frequency);
  const tone = toneNear(measures.excerpt, rate, frequency);
  // From the middle on: a channel that was switched over settles first.
  const from = Math.floor(measures.excerpt.length / 2);
  const count = Math.min(measures.excerpt.length - from, Math.ceil((periods * rate) / frequency));
  const wave = Array.from(
    measures.excerpt.subarray(from, from + count),
    (each, n) => [(1000 * n) / rate, each * Math.abs(per.scale) * factor] as const,
  );
  const shown = [...wave.map(([, y]) => y), peak * factor, -peak * factor];
  const high = (1000 * count) / rate;
  const amplitude = tone.known ? tone.value.amplitude * Math.abs(per.scale) : undefined;
  return [
    {
      of: recordName(record),
      at: record.at,
      title: 'On the calibrator',
      x: { name: 'time', unit: 'ms', scale: 'linear', low: 0, high },
      y: axisFor(per.motion, unit, 'linear', shown),
      curves: [
        { name: 'found', is: 'found', points: wave },
        ...[1, -1].map((side) => ({
          name: side > 0 ? 'expected peak' : 'expected trough',
          is: 'expected' as const,
          points: [
            [0, side * peak * factor],
            [high, side * peak * factor],
          ] as const,
        })),
      ],
      bands: [],
      marks: [],
      rows: [
        {
          what: 'peak',
          expected: measuredLevel({ ...asRead, value: peak }),
          found: amplitude === undefined ? 'no line' : measuredLevel({ ...asRead, value: amplitude }),
        },
        {
          what: 'frequency',
          expected: measured('frequency', frequency, 5),
          found: tone.known ? measured('frequency', tone.value.frequency, 5) : 'no line',
        },
      ],
    },
  ];
}
