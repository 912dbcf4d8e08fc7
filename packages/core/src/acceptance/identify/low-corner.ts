import { fromAll } from '../../quantity/index.ts';
import { coverageFactor } from '../../uncertainty/coverage.ts';
import type { Course } from '../course.ts';
import { chainOf, cornerOfTransducer, noiseAtInput } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { transducerPart } from './chain-part.ts';
import { type FoundOfChain, identifyKind } from './identify-kind.ts';
import { settlingFit } from './settling-fit.ts';

/** A step of less than this is no power coming on, in volts. */
const leastStep = 1;
/** Points of the settling that are needed, and how far what the fit leaves may reach of its height. */
const fewest = 40;
const mostLeft = 0.02;

/** The lower corner by which the output settles after power comes on: f = α/2π of one exponential. */
export const lowCorner = identifyKind({
  kind: 'low-corner',
  title: 'Lower corner',
  on: ['power-on'],
  applies: (designed) => chainOf(designed)?.transducer.biased !== undefined,
  identify: ({ designed, record }): readonly FoundOfChain[] => {
    const { measures, statement } = record;
    // Behind a coupling the corners of transducer and input settle together, which one exponential does not tell.
    if (!statement.coupling.known || statement.coupling.value !== 'direct') return [];
    const known = fromAll(
      { rate: measures.rate, corner: cornerOfTransducer(designed), scale: voltsPerNumber(record) },
      (each) => each,
    );
    if (!known.known || !(known.value.corner > 0)) return [];
    const { rate, corner, scale } = known.value;
    const step = measures.course.stretch / rate;
    const points = afterPower(measures.course, scale, Math.ceil(0.005 / step));
    if (points === undefined || points.length < fewest) return [];
    const noise = noiseAtInput(designed);
    const density = noise.known ? (frequency: number) => noise.value(frequency) ** 2 : undefined;
    const fit = settlingFit(points, step, guessOf(points, step), density);
    // Less than three time constants of record do not tell the end from the way to it.
    if (fit === undefined || fit.left > mostLeft || points.length * step * fit.rate < 3) return [];
    const value = fit.rate / (2 * Math.PI);
    const reach = (coverageFactor(0.95, points.length - 3) * fit.error) / (2 * Math.PI);
    return [
      {
        quantity: 'frequency',
        value,
        interval: { low: value - reach, high: value + reach },
        predicted: corner,
        allowed: { low: 0.5 * corner, high: 2 * corner },
        tolerance: 'half to twice: corners of single pieces differ',
        part: transducerPart(designed),
      },
    ];
  },
});

/** Volts from a little after the greatest jump between two stretches on. */
function afterPower({ means }: Course, scale: number, wait: number): Float64Array | undefined {
  const volts = means.map((each) => each * scale);
  let at = -1;
  for (let n = 1; n < volts.length; n++) {
    const jump = Math.abs(volts[n]! - volts[n - 1]!);
    if (jump >= leastStep && (at < 0 || jump > Math.abs(volts[at]! - volts[at - 1]!))) at = n;
  }
  // The last stretch may hold fewer samples.
  return at < 0 ? undefined : volts.slice(at + Math.max(2, wait), -1);
}

/** 1/e of the way to the last tenth. */
function guessOf(points: Float64Array, step: number): number {
  const last = points.subarray(Math.floor(0.9 * points.length));
  const end = last.reduce((sum, each) => sum + each, 0) / last.length;
  const height = points[0]! - end;
  const passed = points.findIndex((each) => Math.abs(each - end) < Math.abs(height) / Math.E);
  return 1 / (step * Math.max(1, passed));
}
