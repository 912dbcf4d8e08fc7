import { measured } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import { noiseAtInput } from '../expected.ts';
import { recordName, voltsPerNumber } from '../measured-record.ts';
import { axisFor, type Picture, shownOr, type thinned } from './picture.ts';

/** Frequencies of the rows, in hertz: three to a decade are enough to see a slope, a hum and a floor. */
const told = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000] as const;

/** Noise density of a machine that stands still, beside the predicted one and half and twice of it. */
export function floorPicture({ designed, record }: CheckedRecord): readonly Picture[] {
  const known = fromAll(
    { fine: record.measures.density, slow: record.measures.slowDensity, scale: voltsPerNumber(record) },
    (each) => each,
  );
  const noise = noiseAtInput(designed);
  if (!known.known || !noise.known) return [];
  const { fine, slow, scale } = known.value;
  const border = 0.35 * slow.rate;
  const spectra =
    fine === slow
      ? [{ of: fine, from: 0, to: 0.4 * fine.rate }]
      : [
          { of: slow, from: 0, to: border },
          { of: fine, from: border, to: 0.4 * fine.rate },
        ];
  const points = spectra.flatMap(({ of, from, to }) =>
    Array.from(of.density, (each, k) => [k * of.resolution, 1e6 * Math.abs(scale) * Math.sqrt(each)] as const).filter(
      ([frequency]) => frequency >= Math.max(from, 3 * of.resolution) && frequency < to,
    ),
  );
  if (points.length < 2) return [];
  const [first, last] = [points[0]![0], points.at(-1)![0]];
  const x = { name: 'frequency', unit: 'Hz', scale: 'log', low: first, high: last } as const;
  const predicted = Array.from({ length: 80 }, (_, n) => {
    const frequency = first * (last / first) ** (n / 79);
    return [frequency, 1e6 * noise.value(frequency)] as const;
  });
  const times = (by: number) => predicted.map(([frequency, each]) => [frequency, by * each] as const);
  const found = middling(points, x);
  return [
    {
      of: recordName(record),
      at: record.at,
      title: 'Noise at the input, machine stopped',
      x,
      y: axisFor(
        'noise density',
        'µV/√Hz',
        'log',
        [...found, ...times(0.5), ...times(2)].map(([, y]) => y),
      ),
      curves: [
        { name: 'found', is: 'found', points: found },
        { name: 'predicted', is: 'expected', points: predicted },
        { name: 'twice', is: 'limit', points: times(2) },
        { name: 'half', is: 'limit', points: times(0.5) },
      ],
      bands: [],
      marks: [],
      rows: told
        .filter((each) => each >= first && each <= last)
        .map((each) => ({
          what: `at ${each} Hz`,
          expected: measured('voltage density', noise.value(each), 3),
          found: shownOr(1e-6 * nearest(found, each), (value) => measured('voltage density', value, 3)),
        })),
    },
  ];
}

/** rms of the lines of each stretch: a density is read off its middle, not off its highest line. */
function middling(points: readonly (readonly [number, number])[], x: Parameters<typeof thinned>[1]) {
  const bins = new Map<number, [frequencies: number, squares: number, count: number]>();
  for (const [frequency, value] of points) {
    const bin = Math.floor((Math.log(frequency / x.low) / Math.log(x.high / x.low)) * 120);
    const before = bins.get(bin) ?? [0, 0, 0];
    bins.set(bin, [before[0] + frequency, before[1] + value * value, before[2] + 1]);
  }
  return [...bins.entries()]
    .sort(([a], [b]) => a - b)
    .map(([, [frequencies, squares, count]]) => [frequencies / count, Math.sqrt(squares / count)] as const);
}

function nearest(points: readonly (readonly [number, number])[], frequency: number): number {
  const off = ([x]: readonly [number, number]) => Math.abs(Math.log(x / frequency));
  return points.reduce((best, each) => (off(each) < off(best) ? each : best))[1];
}
