import {
  type DesignedPoint,
  type Prediction,
  type QuantityName,
  quantities,
  type Showing,
  spelledUnit,
  valueIn,
} from '@soundpost/core';
import { logAxis, roundDown, roundUp } from '../drawing/axis.ts';
import { between, plotted } from '../drawing/curve.ts';
import {
  type Box,
  type Drawing,
  type Label,
  type Look,
  label,
  type Mark,
  type Point,
  polyline,
  type Width,
} from '../drawing/drawing.ts';
import { boxesAlong, placing } from '../drawing/label-placing.ts';
import { axisNumbers, frame, grid, type Plot } from '../drawing/plot.ts';
import { amplitudeContent } from './amplitude-content.ts';

const layouts: Readonly<Record<Width, { width: number; plot: Box; size: number }>> = {
  wide: { width: 760, plot: { x: 58, y: 30, width: 690, height: 230 }, size: 12 },
  narrow: { width: 358, plot: { x: 44, y: 26, width: 308, height: 200 }, size: 10 },
};

/** One share of the noise, or the whole of it. */
export interface NoiseShare {
  readonly name: string;
  readonly part: string;
  readonly density: (frequency: number) => number;
  readonly look: Look;
}

const shareLooks: readonly Look[] = ['curve-second', 'curve-third', 'curve-fourth'];

/** The noise of each stage as it arrives at the end, in the motion that is sensed, and all of it together. */
export function noiseShares({ noise, noiseOf }: Prediction): readonly NoiseShare[] {
  if (!noise.known || !noiseOf.known || noiseOf.value.length === 0) return [];
  return [
    { name: 'all together', part: '', density: noise.value, look: 'curve' },
    ...noiseOf.value.map(({ stage, density }, index) => ({
      name: stage.name,
      part: stage.part,
      density: (frequency: number) => density(frequency),
      look: shareLooks[index % shareLooks.length]!,
    })),
  ];
}

export function densityOf(motion: Prediction['chain']['transducer']['senses']): QuantityName {
  return `${motion} density`;
}

export function noisePlot(designed: DesignedPoint, showing: Showing, width: Width): Drawing | undefined {
  const prediction = designed.appraisal?.prediction;
  const shares = prediction === undefined ? [] : noiseShares(prediction);
  if (prediction === undefined || shares.length === 0) return undefined;
  const { frequencies } = amplitudeContent(designed);
  const layout = layouts[width];
  const { plot: box, size } = layout;
  const name = densityOf(prediction.chain.transducer.senses);
  const unit = quantities[name][showing.units ?? 'metric'][0]!;
  const at = plotted(frequencies.low, frequencies.high, [], 120);
  const curves = shares.map((share) => ({
    share,
    values: at.map((frequency) => valueIn(unit, name, share.density(frequency))),
  }));
  const all = curves.flatMap(({ values }) => values.filter((value) => value > 0 && Number.isFinite(value)));
  if (all.length === 0) return undefined;
  const highest = Math.max(...all);
  const y = logAxis(
    { low: roundDown(Math.max(Math.min(...all), highest / 1e5) / 1.2), high: roundUp(highest * 1.6) },
    { from: box.y + box.height, to: box.y },
    70,
  );
  const plot: Plot = {
    box,
    size,
    x: logAxis(frequencies, { from: box.x, to: box.x + box.width }, 10 * layout.size),
    y,
  };
  const free = placing(box);
  const drawn = curves.map(({ share, values }) => {
    const points = at.map((frequency, index): Point | undefined =>
      values[index]! > 0 ? [plot.x.at(frequency), y.at(values[index]!)] : undefined,
    );
    const parts = between(points, box.y, box.y + box.height);
    for (const part of parts) for (const each of boxesAlong(part, 2)) free.keepFree(each);
    return { share, parts };
  });
  const labels = drawn.flatMap(({ share, parts }) => free.place(placesAlong(parts, share.name, size)) ?? []);
  return {
    width: layout.width,
    height: box.y + box.height + 2 * size + 2,
    title: `Noise of the chain at ${designed.point.of}, by stage`,
    description: `Noise density over log frequency: ${shares.map((share) => share.name).join(', ')}. Numbers in the table.`,
    marks: [
      ...grid(plot),
      ...drawn.flatMap(({ share, parts }): readonly Mark[] => parts.map((part) => polyline(part, share.look))),
      frame(plot),
      ...axisNumbers(plot),
      label(2, box.y - 0.9 * size, `noise density, ${spelledUnit(unit)}`, { size: size - 1, look: 'strong' }),
      ...labels,
    ],
  };
}

/** Above or below a curve, from its right end to its left. */
function placesAlong(parts: readonly (readonly Point[])[], text: string, size: number): readonly Label[] {
  const points = parts.flat();
  return [0.8, 0.6, 0.4, 0.9, 0.2, 0.05].flatMap((share) => {
    const point = points[Math.floor((points.length - 1) * share)];
    if (point === undefined) return [];
    return [-0.6, 1.3, -1.6, 2.3].map((lift) =>
      label(point[0], point[1] + lift * size, text, { size, anchor: share > 0.5 ? 'end' : 'start', cleared: true }),
    );
  });
}
