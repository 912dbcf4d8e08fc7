import { level, type Motion, type Showing, showQuantity, usualUnit, valueIn } from '@soundpost/core';
import { type Axis, logAxis, oneTwoFive, roundDown, roundUp } from '../drawing/axis.ts';
import { between, plotted } from '../drawing/curve.ts';
import { type Box, label, type Mark, type Point, polyline, type Width } from '../drawing/drawing.ts';
import { placing } from '../drawing/label-placing.ts';
import type { Plot } from '../drawing/plot.ts';
import { type AmplitudeContent, edges, isLine, lowestCeiling, velocityOf } from './amplitude-content.ts';

/** The unit velocities are written in on the left axis. */
export const velocityUnit = (showing: Showing) => usualUnit('velocity', 1, showing.units);

/** The plane of the amplitude chart: log velocity, as rms, over log frequency; both axes take SI values. */
export function velocityPlane(content: AmplitudeContent, box: Box, size: number, showing: Showing): Plot {
  const one = valueIn(velocityUnit(showing), 'velocity', 1);
  const ends = velocityEnds(content);
  const y = logAxis(
    { low: roundDown(ends.low * one), high: roundUp(ends.high * one) },
    { from: box.y + box.height, to: box.y },
    84,
    powerOfTen,
  );
  const inSi: Axis = { ...y, low: y.low / one, high: y.high / one, at: (value) => y.at(value * one) };
  return { box, size, x: logAxis(content.frequencies, { from: box.x, to: box.x + box.width }, 10 * size), y: inSi };
}

const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** `0.001` and above as it is, below as `10⁻⁵`, `2·10⁻⁵`. */
function powerOfTen(value: number): string {
  if (value >= 0.00099) return String(Number(value.toPrecision(6)));
  const exponent = Math.floor(Math.log10(value) + 1e-9);
  const power = `10⁻${[...String(-exponent)].map((digit) => raised[Number(digit)]).join('')}`;
  const times = Math.round(value / 10 ** exponent);
  return times === 1 ? power : `${times}·${power}`;
}

/** From below the floor under the targets, or what must be seen, to above what must be survived; nine decades at most. */
function velocityEnds({ marks, floor, ceilings, frequencies }: AmplitudeContent) {
  const levels = marks.flatMap((mark) =>
    [mark.smallest, mark.largest, mark.noise].flatMap((each) =>
      each === undefined ? [] : edges(mark).map((frequency) => velocityOf(each, frequency)),
    ),
  );
  const lines = marks.filter((mark) => isLine(mark.target));
  const floors = floor === undefined ? [] : lines.map((mark) => floor.at(mark.band.low) ?? Number.NaN);
  const tops = plotted(frequencies.low, frequencies.high, [], 60).map((f) => lowestCeiling(ceilings, f) ?? Number.NaN);
  const finite = (values: readonly number[]) => values.filter((value) => value > 0 && Number.isFinite(value));
  const [below, above] = [finite([...levels, ...floors]), finite([...levels, Math.min(...finite(tops))])];
  if (below.length === 0) return { low: 1e-6, high: 1 };
  const high = Math.max(...above) * 3;
  return { low: Math.max(Math.min(...below) / 3, high / 1e9), high };
}

export type Family = 'acceleration' | 'displacement';

/** Lines of one acceleration (falling) or one displacement (rising), a line to a decade, written where they leave the frame. */
export function slantedFamily(of: Family, plot: Plot, showing: Showing, width: Width): readonly Mark[] {
  const { box, x, y, size } = plot;
  const falls = of === 'acceleration';
  const small = size - 1;
  const margin = placing(
    falls
      ? { x: box.x + box.width, y: box.y - 2, width: width === 'wide' ? 70 : 50, height: box.height + 8 }
      : { x: box.x - 30, y: box.y - 1.5 * size, width: box.width + 60, height: 1.45 * size },
    width === 'wide' ? 3 : 1,
  );
  const marks: Mark[] = [];
  for (const value of decadesWithin(of, plot, showing)) {
    const ends = [x.low, x.high].map((f): Point => [x.at(f), y.at(velocityOf(inFamily(of, value), f))]);
    const [part] = between(ends, box.y, box.y + box.height);
    if (part === undefined) continue;
    marks.push(polyline(part, falls ? 'slant-acceleration' : 'slant-displacement'));
    const [right, height] = part.at(-1)!;
    const text = showQuantity(falls ? 'acceleration' : 'length', value, showing);
    if (falls && right > box.x + box.width - 1) {
      margin.place([label(right + 5, height + 0.35 * small, text, { size: small })]);
    }
    if (!falls && height < box.y + 1) {
      margin.place([label(right, box.y - 0.45 * small, text, { size: small, anchor: 'middle', look: 'italic' })]);
    }
  }
  return [...marks, ...margin.placed];
}

/** Accelerations are told as peak, displacements as peak to peak, as the trade does. */
function inFamily(of: Family, value: number) {
  return level(of as Motion, value, of === 'acceleration' ? 'peak' : 'peak-to-peak');
}

/** The decades of a family that cross the frame, in the unit they are written in. */
function decadesWithin(of: Family, { x, y }: Plot, showing: Showing): readonly number[] {
  const unit = of === 'acceleration' ? 'g' : showing.units === 'us' ? 'mil' : 'um';
  const one = 1 / valueIn(unit, of === 'acceleration' ? 'acceleration' : 'length', 1);
  const [atLow, atHigh] = [x.low, x.high].map((frequency) => velocityOf(inFamily(of, one), frequency)) as [
    number,
    number,
  ];
  return oneTwoFive({ low: y.low / Math.max(atLow, atHigh), high: y.high / Math.min(atLow, atHigh) })
    .filter((value) => Number.isInteger(Math.round(Math.log10(value) * 1e6) / 1e6))
    .map((value) => value * one);
}
