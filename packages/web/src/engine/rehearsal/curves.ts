import { type AsSeen, type Motion, motionOrder, type RehearsedRecord, type Showing } from '@soundpost/core';
import type { CurveView, MarkView } from './rehearsal-views.ts';

interface MotionUnit {
  readonly name: string;
  readonly size: number;
}

const metric: Readonly<Record<Motion, MotionUnit>> = {
  acceleration: { name: 'g', size: 9.80665 },
  velocity: { name: 'mm/s', size: 1e-3 },
  displacement: { name: 'µm', size: 1e-6 },
};
const american: Readonly<Record<Motion, MotionUnit>> = {
  acceleration: { name: 'g', size: 9.80665 },
  velocity: { name: 'in/s', size: 0.0254 },
  displacement: { name: 'mil', size: 2.54e-5 },
};

/** Columns a curve is thinned to: as many as a screen shows. */
const columns = 900;

export function curveUnit(motion: Motion, showing: Showing): MotionUnit {
  return (showing.units === 'us' ? american : metric)[motion];
}

/** A stretch of the waveform long enough for some turns and short enough to see a blow; least and greatest of each column. */
export function waveformCurve(record: RehearsedRecord, seconds: number, showing: Showing): CurveView {
  const unit = curveUnit(record.senses, showing);
  const count = Math.min(record.motion.length, Math.round(seconds * record.rate));
  const stretch = record.motion.subarray(record.motion.length - count);
  const wide = Math.min(columns, count);
  const points: number[] = [];
  let most = 0;
  for (let column = 0; column < wide; column++) {
    const [from, to] = [Math.floor((column * count) / wide), Math.floor(((column + 1) * count) / wide)];
    let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let n = from; n < to; n++) {
      least = Math.min(least, stretch[n]!);
      greatest = Math.max(greatest, stretch[n]!);
    }
    const at = (1000 * from) / record.rate;
    points.push(at, least / unit.size, at, greatest / unit.size);
    most = Math.max(most, Math.abs(least), Math.abs(greatest));
  }
  const top = (most * 1.05) / unit.size || 1;
  const low = record.loop === undefined ? -top : 0;
  return {
    title: record.loop === undefined ? 'Waveform, the last of the record' : 'What the loop indicates',
    across: { unit: 'ms', low: 0, high: (1000 * count) / record.rate, scale: 'linear' },
    up: { unit: unit.name, low, high: top, scale: 'linear' },
    points: Float32Array.from(points),
    marks: [],
  };
}

/** The spectrum in a motion, over a logarithmic frequency; of each column the highest line. */
export function spectrumCurve(record: RehearsedRecord, seen: AsSeen, motion: Motion, showing: Showing): CurveView {
  const unit = curveUnit(motion, showing);
  const { amplitudes, resolution } = seen.spectrum;
  const turned = motionOrder[motion] - motionOrder[record.senses];
  const [low, high] = [2, record.rate / 2.56];
  const points: number[] = [];
  const step = Math.log(high / low) / columns;
  let column = 0;
  let [best, at] = [0, 0];
  for (let k = Math.ceil(low / resolution); k * resolution <= high; k++) {
    const frequency = k * resolution;
    const place = Math.floor(Math.log(frequency / low) / step);
    if (place !== column && best > 0) {
      points.push(at, best / unit.size);
      best = 0;
    }
    column = place;
    const rms = ((amplitudes[k] ?? 0) / Math.SQRT2) * (2 * Math.PI * frequency) ** turned;
    if (rms > best) [best, at] = [rms, frequency];
  }
  const heights = points.filter((_, index) => index % 2 === 1).sort((a, b) => a - b);
  const greatest = heights.at(-1) ?? 1;
  const marks = seen.targets.flatMap(({ seen: found }): readonly MarkView[] =>
    found.known && found.value.frequency !== undefined
      ? [{ name: found.value.target, at: found.value.frequency, seen: found.value.seen }]
      : [],
  );
  const burst = seen.targets.flatMap(({ seen: found }) =>
    found.known && found.value.band !== undefined && found.value.kind !== 'overall' ? [found.value.band] : [],
  )[0];
  return {
    title: 'Spectrum',
    across: { unit: 'Hz', low, high, scale: 'logarithmic' },
    up: {
      unit: `${unit.name} rms`,
      low: Math.max((heights[heights.length >> 4] ?? 0) / 2, greatest * 1e-6),
      high: greatest * 2,
      scale: 'logarithmic',
    },
    points: Float32Array.from(points),
    marks,
    ...(burst === undefined ? {} : { band: burst }),
  };
}

/** The envelope spectrum as far as bearings strike, over an even frequency; of each column the highest line. */
export function envelopeCurve(seen: AsSeen, showing: Showing): CurveView | undefined {
  if (!seen.envelope.known) return undefined;
  const { spectrum, lines, motion, band } = seen.envelope.value;
  const unit = curveUnit(motion, showing);
  const fastest = Math.max(100, ...lines.map((each) => each.frequency));
  const high = Math.min(4.5 * fastest, (band.high - band.low) / 2);
  const last = Math.floor(high / spectrum.resolution);
  const wide = Math.min(columns, last);
  const points: number[] = [];
  let most = 0;
  for (let column = 0; column < wide; column++) {
    let [best, at] = [0, 0];
    for (let k = Math.floor((column * last) / wide) + 1; k <= Math.floor(((column + 1) * last) / wide); k++) {
      if (spectrum.amplitudes[k]! > best) [best, at] = [spectrum.amplitudes[k]!, k * spectrum.resolution];
    }
    points.push(at, best / Math.SQRT2 / unit.size);
    most = Math.max(most, best / Math.SQRT2 / unit.size);
  }
  return {
    title: 'Envelope spectrum',
    across: { unit: 'Hz', low: 0, high, scale: 'linear' },
    up: { unit: `${unit.name} rms`, low: 0, high: most * 1.15 || 1, scale: 'linear' },
    points: Float32Array.from(points),
    marks: lines.filter((each) => each.seen).map(({ name, frequency }) => ({ name, at: frequency, seen: true })),
  };
}

/** Curves of two chains that stand beside each other reach equally far. */
export function alike(curves: readonly (readonly CurveView[])[]): readonly (readonly CurveView[])[] {
  return curves.map((own) =>
    own.map((curve) => {
      const same = curves.flatMap((each) =>
        each.filter(({ title, up }) => title === curve.title && up.unit === curve.up.unit),
      );
      const low = Math.min(...same.map(({ up }) => up.low));
      const high = Math.max(...same.map(({ up }) => up.high));
      return { ...curve, up: { ...curve.up, low, high } };
    }),
  );
}
