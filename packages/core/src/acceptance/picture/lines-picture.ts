import { measured, measuredLevel, said } from '../../finding/measure.ts';
import { fromAll, level } from '../../quantity/index.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import { motionPerNumber } from '../expected.ts';
import type { MachineLine } from '../machine-at-speed.ts';
import { recordName } from '../measured-record.ts';
import { runningRecord } from '../running-record.ts';
import { motionUnits } from './motion-units.ts';
import { axisFor, type Picture, thinned } from './picture.ts';

/** Names that are marked; a picture with more is no longer read. */
const mostMarks = 8;

/** The lines of a running machine as the channel reads them, beside where its lines lie at the declared speed. */
export function linesPicture(looked: CheckedRecord): readonly Picture[] {
  const { designed, record } = looked;
  const known = fromAll({ running: runningRecord(looked), per: motionPerNumber(designed, record) }, (each) => each);
  if (!known.known) return [];
  const { running, per } = known.value;
  const { unit, factor } = motionUnits[per.motion];
  const { slow, fine } = running;
  const border = 0.35 * slow.density.rate;
  const last = 0.4 * fine.density.rate;
  const spectra =
    fine === slow
      ? [{ of: fine, from: 0, to: last }]
      : [
          { of: slow, from: 0, to: border },
          { of: fine, from: border, to: last },
        ];
  const rms = (density: number, bandwidth: number) => Math.sqrt(density * bandwidth) * Math.abs(per.scale) * factor;
  const points = spectra.flatMap(({ of: { density }, from, to }) =>
    Array.from(
      density.density,
      (each, k) => [k * density.resolution, rms(each, density.noiseBandwidth)] as const,
    ).filter(([frequency]) => frequency >= Math.max(from, 3 * density.resolution) && frequency < to),
  );
  if (points.length < 2) return [];
  const x = { name: 'frequency', unit: 'Hz', scale: 'log', low: points[0]![0], high: last } as const;
  const curve = thinned(points, x);
  const marked = marksOf(running.lines, looked, x, slow.density.resolution);
  return [
    {
      of: recordName(record),
      at: record.at,
      title: 'Lines of the running machine',
      x,
      y: axisFor(
        per.motion,
        `${unit} rms`,
        'log',
        curve.map(([, y]) => y),
      ),
      curves: [{ name: 'found', is: 'found', points: curve }],
      bands: [],
      marks: marked.map(({ called, frequency }) => ({ called, x: frequency })),
      rows: marked.map(({ line, frequency }) => {
        const seen = running.at(frequency);
        return {
          what: line.name,
          expected: measured('frequency', frequency, 4),
          found:
            seen === undefined
              ? 'nothing stands out there'
              : said`${measuredLevel(level(per.motion, seen.amplitude * Math.abs(per.scale), 'peak'))} at ${measured('frequency', seen.frequency, 4)}`,
        };
      }),
    },
  ];
}

/** What is looked for first: turning, what turns with blades and teeth, what rolls, the mains. */
const wanted = ['1x', '2x', '3x', 'vane-pass', 'blade-pass', 'mesh', 'outer-ring', 'inner-ring', 'cage', 'twice-line'];

/** Lines that the targets of the point name, then those that are looked for first; none too near to another to be told. */
function marksOf(
  lines: readonly MachineLine[],
  { designed }: CheckedRecord,
  { low, high }: { readonly low: number; readonly high: number },
  resolution: number,
): readonly MachineLine[] {
  const asked = designed.point.targets.map(({ name }) => name).join(' | ');
  const rank = ({ line, called }: MachineLine) => {
    const place = wanted.indexOf(called);
    return asked.includes(called.replaceAll('-', ' ')) || asked.includes(line.name)
      ? -1
      : place < 0
        ? wanted.length
        : place;
  };
  const kept: MachineLine[] = [];
  const inside = lines
    .filter((each) => each.frequency > low && each.frequency < high && rank(each) < wanted.length)
    .sort((a, b) => rank(a) - rank(b));
  for (const each of inside) {
    const near = kept.some(
      ({ frequency }) => Math.abs(frequency - each.frequency) < Math.max(3 * resolution, 0.02 * frequency),
    );
    if (!near && kept.length < mostMarks) kept.push(each);
  }
  return kept.sort((a, b) => a.frequency - b.frequency);
}
