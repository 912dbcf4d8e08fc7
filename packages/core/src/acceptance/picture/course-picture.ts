import { fullScale, liveZero } from '../../chain/formulas/loop-state.ts';
import { measured, measuredSpan } from '../../finding/measure.ts';
import type { Answer, QuantityName } from '../../quantity/index.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import { restAtInput } from '../expected.ts';
import { amperesPerNumber, recordName, voltsPerNumber } from '../measured-record.ts';
import { axisFor, type Picture, shownOr, thinned } from './picture.ts';

/** What is recorded along its time, beside the span that is expected once it stands: a rest voltage, a loop. */
export function coursePicture({ designed, record }: CheckedRecord): readonly Picture[] {
  const { course, rate } = record.measures;
  if (!rate.known) return [];
  const amperes = amperesPerNumber(record);
  const [scale, quantity, unit, per] = amperes.known
    ? ([amperes, 'current', 'mA', 1000] as const)
    : ([voltsPerNumber(record), 'voltage', 'V', 1] as const);
  if (!scale.known) return [];
  const expected = amperes.known ? loopSpan : restAtInput(designed);
  const span = expected?.known === true ? expected.value : undefined;
  const seconds = course.stretch / rate.value;
  const along = (values: Float64Array) =>
    Array.from(values, (each, n) => [(n + 0.5) * seconds, each * scale.value * per] as const);
  const [means, least, greatest] = [along(course.means), along(course.least), along(course.greatest)];
  const x = { name: 'time', unit: 's', scale: 'linear', low: 0, high: course.means.length * seconds } as const;
  const finite = (points: readonly (readonly [number, number])[]) =>
    points.map(([, value]) => value).filter(Number.isFinite);
  const shown = finite([...least, ...greatest]);
  const y = axisFor(quantity, unit, 'linear', [
    ...shown,
    ...(span === undefined ? [] : [span.low * per, span.high * per]),
  ]);
  const there = finite(means);
  const mean = there.reduce((sum, value) => sum + value, 0) / there.length;
  return [
    {
      of: recordName(record),
      at: record.at,
      title: quantity === 'current' ? 'Current of the loop' : 'Direct voltage at the input',
      x,
      y,
      curves: [{ name: 'found', is: 'found', points: thinned(means, x) }],
      bands: span === undefined ? [] : [{ name: 'expected', along: 'y', low: span.low * per, high: span.high * per }],
      marks: [],
      rows: [
        row('mean', quantity, mean / per, span),
        row('least', quantity, Math.min(...shown) / per, span),
        row('greatest', quantity, Math.max(...shown) / per, span),
      ],
    },
  ];
}

const loopSpan: Answer<{ readonly low: number; readonly high: number }> = {
  known: true,
  value: { low: liveZero, high: fullScale },
};

function row(
  what: string,
  quantity: QuantityName,
  value: number,
  span: { readonly low: number; readonly high: number } | undefined,
) {
  return {
    what,
    expected: span === undefined ? 'not known' : measuredSpan(quantity, span),
    found: shownOr(value, (each) => measured(quantity, each, 4)),
  };
}
