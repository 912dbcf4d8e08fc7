import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import { decayFound } from '../check/resonance.ts';
import { resonanceOf } from '../expected.ts';
import { recordName, voltsPerNumber } from '../measured-record.ts';
import { axisFor, type Picture, shownOr, thinned } from './picture.ts';

/** Where the check of the resonance lets it lie, over the predicted one. */
const allowed = { low: 0.75, high: 1.4 } as const;
/** Shown of a tap, in seconds. */
const before = 0.0005;
const after = 0.008;

/** What rings after taps: the first one along its time, and the spectrum of the record beside the expected resonance. */
export function ringingPicture({ designed, record }: CheckedRecord): readonly Picture[] {
  const { measures } = record;
  const known = fromAll(
    { taps: measures.taps, rate: measures.rate, density: measures.density, scale: voltsPerNumber(record) },
    (each) => each,
  );
  if (!known.known) return [];
  const { taps, rate, density, scale } = known.value;
  const named = { of: recordName(record), at: record.at };
  const strongest = taps.taps.reduce(
    (most, each) => (most === undefined || each.peak > most.peak ? each : most),
    taps.taps[0],
  );
  const predicted = resonanceOf(designed);
  const expected = predicted?.known === true ? predicted.value : undefined;
  const found =
    expected === undefined ? undefined : decayFound(record, 0.2 * expected, Math.min(1.6 * expected, 0.45 * rate));
  const resonance = found?.known === true ? found.value : undefined;
  const pictures: Picture[] = [];
  if (strongest !== undefined) {
    const wave = Array.from(
      strongest.samples,
      (each, n) => [(1000 * (n - strongest.onset)) / rate, each * scale] as const,
    ).filter(([at]) => at >= -1000 * before && at <= 1000 * after);
    pictures.push({
      ...named,
      title: 'Strongest tap',
      x: { name: 'time', unit: 'ms', scale: 'linear', low: -1000 * before, high: 1000 * after },
      y: axisFor(
        'voltage',
        'V',
        'linear',
        wave.map(([, y]) => y),
      ),
      curves: [{ name: 'found', is: 'found', points: wave.slice(0, 900) }],
      bands: [],
      marks: [],
      rows: [
        { what: 'taps seen', expected: '—', found: String(taps.taps.length) },
        {
          what: 'peak of the strongest',
          expected: '—',
          found: shownOr(Math.abs(strongest.peak * scale), (value) => measured('voltage', value, 3)),
        },
      ],
    });
  }
  if (expected === undefined) return pictures;
  const x = {
    name: 'frequency',
    unit: 'Hz',
    scale: 'log',
    low: Math.max(50, 4 * density.resolution),
    high: rate / 2,
  } as const;
  const line = thinned(
    Array.from(
      density.density,
      (each, k) => [k * density.resolution, 1e6 * Math.abs(scale) * Math.sqrt(each)] as const,
    ),
    x,
  );
  const span = { low: allowed.low * expected, high: allowed.high * expected };
  pictures.push({
    ...named,
    title: 'Resonance after taps',
    x,
    y: axisFor(
      'density of the record',
      'µV/√Hz',
      'log',
      line.map(([, y]) => y),
    ),
    curves: [{ name: 'found', is: 'found', points: line }],
    bands: [{ name: 'expected', along: 'x', low: span.low, high: Math.min(span.high, x.high) }],
    marks: resonance === undefined ? [] : [{ called: 'found', x: resonance.frequency }],
    rows: [
      {
        what: 'mounted resonance',
        expected: said`${measured('frequency', expected, 4)}, in ${measuredSpan('frequency', span)}`,
        found: resonance === undefined ? 'not told by these taps' : measured('frequency', resonance.frequency, 4),
      },
      {
        what: 'damping ratio',
        expected: '—',
        found: resonance === undefined ? 'not told by these taps' : measured('ratio', resonance.damping, 2),
      },
    ],
  });
  return pictures;
}
