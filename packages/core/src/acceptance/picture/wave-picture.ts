import { measured } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import { recordName, voltsPerNumber } from '../measured-record.ts';
import { axisFor, type Picture } from './picture.ts';

/** The beginning of a record as it is: at most this many samples. */
const most = 720;

export function wavePicture({ record }: CheckedRecord): readonly Picture[] {
  const known = fromAll({ rate: record.measures.rate, scale: voltsPerNumber(record) }, (each) => each);
  if (!known.known) return [];
  const { rate, scale } = known.value;
  const wave = Array.from(
    record.measures.excerpt.subarray(0, most),
    (each, n) => [(1000 * n) / rate, each * scale] as const,
  ).filter(([, y]) => Number.isFinite(y));
  if (wave.length < 2) return [];
  const values = wave.map(([, y]) => y);
  return [
    {
      of: recordName(record),
      at: record.at,
      title: 'Beginning of the record',
      x: { name: 'time', unit: 'ms', scale: 'linear', low: 0, high: wave.at(-1)![0] },
      y: axisFor('voltage', 'V', 'linear', values),
      curves: [{ name: 'found', is: 'found', points: wave }],
      bands: [],
      marks: [],
      rows: [
        { what: 'least', expected: '—', found: measured('voltage', Math.min(...values), 3) },
        { what: 'greatest', expected: '—', found: measured('voltage', Math.max(...values), 3) },
      ],
    },
  ];
}
