import { type Showing, showQuantity, spelledUnit } from '@soundpost/core';
import { between, plotted } from '../drawing/curve.ts';
import {
  type Box,
  type Drawing,
  type Label,
  label,
  line,
  type Mark,
  type Point,
  polyline,
  rectangle,
  type Width,
} from '../drawing/drawing.ts';
import { boxesAlong, type Placing, placing } from '../drawing/label-placing.ts';
import { axisNumbers, frame, grid, type Plot } from '../drawing/plot.ts';
import { fitted } from '../drawing/text-extent.ts';
import {
  type AmplitudeContent,
  amplitudeContent,
  type ChartedPoint,
  edges,
  isLine,
  lowestCeiling,
  type TargetMark,
  velocityOf,
} from './amplitude-content.ts';
import { curveLabels, targetLabels } from './amplitude-labels.ts';
import { type UsableBand, usableBands, usableWords } from './usable-band.ts';
import { slantedFamily, velocityPlane, velocityUnit } from './velocity-plane.ts';
import { zoneLines } from './zone-lines.ts';

interface Layout {
  readonly width: number;
  readonly plot: Box;
  readonly size: number;
}

const layouts: Readonly<Record<Width, Layout>> = {
  wide: { width: 760, plot: { x: 62, y: 48, width: 622, height: 430 }, size: 13 },
  narrow: { width: 358, plot: { x: 40, y: 40, width: 268, height: 360 }, size: 10 },
};

/**
 * The amplitude chart: velocity over frequency, both logarithmic, so that constant acceleration falls and constant
 * displacement rises along straight lines. All levels stand where a sine of that level would.
 */
export function amplitudeChart(point: ChartedPoint, showing: Showing, width: Width): Drawing {
  const content = amplitudeContent(point);
  const layout = layouts[width];
  const plot = velocityPlane(content, layout.plot, layout.size, showing);
  const { x, y, width: wide, height } = layout.plot;
  const free = placing({ x: x + 3, y: y + 2, width: wide - 6, height: height - 4 });
  const curves = curveMarks(content, plot, free);
  const targets = targetMarks(content.marks, plot, free);
  const labels = [...targetLabels(content.marks, plot, free), ...curveLabels(content, plot, free)];
  const zones = zoneLines(point, content.marks, plot, free);
  const strips = usableStrips(usableBands(point, content.frequencies), plot, layout, showing);
  return {
    width: layout.width,
    height: layout.plot.y + layout.plot.height + 2 * layout.size + strips.height + 4,
    title: `Amplitude chart of ${point.point.of}`,
    description: chartInWords(content, showing),
    marks: [
      ...grid(plot),
      ...slantedFamily('acceleration', plot, showing, width),
      ...slantedFamily('displacement', plot, showing, width),
      ...targets.faces,
      ...zones,
      ...curves,
      ...targets.bars,
      frame(plot),
      ...axisNumbers(plot),
      ...captions(layout, showing, width),
      ...labels,
      ...strips.marks,
    ],
  };
}

function curveMarks(
  { floor, ceilings, frequencies, features }: AmplitudeContent,
  plot: Plot,
  free: Placing,
): readonly Mark[] {
  const { x, y, box } = plot;
  const at = plotted(frequencies.low, frequencies.high, features);
  const drawn = (look: 'floor' | 'ceiling', value: (f: number, index: number) => number | undefined) => {
    const sampled = at.map((frequency, index): Point | undefined => {
      const velocity = value(frequency, index);
      return velocity === undefined ? undefined : [x.at(frequency), y.at(velocity)];
    });
    return between(sampled, box.y, box.y + box.height).map((points) => {
      for (const each of boxesAlong(points)) free.keepFree(each);
      return polyline(points, look);
    });
  };
  // Where a limit ends with its band the curve breaks off: it does not fall to the next limit.
  const reaching = (frequency: number) =>
    ceilings.reduce((count, each) => (each.at(frequency) === undefined ? count : count + 1), 0);
  const broken = (frequency: number, index: number) =>
    index > 0 && reaching(frequency) !== reaching(at[index - 1]!) ? undefined : lowestCeiling(ceilings, frequency);
  return [...(floor === undefined ? [] : drawn('floor', floor.at)), ...drawn('ceiling', broken)];
}

const cap = 5;

function targetMarks(marks: readonly TargetMark[], plot: Plot, free: Placing) {
  const faces: Mark[] = [];
  const bars: Mark[] = [];
  for (const mark of marks) {
    const [seen, survived, noise] = [mark.smallest, mark.largest, mark.noise].map((each) =>
      each === undefined ? undefined : edges(mark).map((f): Point => [plot.x.at(f), plot.y.at(velocityOf(each, f))]),
    );
    const lines = isLine(mark.target) ? lineBar(seen?.[0], survived?.[0]) : bandEdges(seen, survived);
    bars.push(...lines, ...noiseTick(noise));
    if (!isLine(mark.target) && seen !== undefined && survived !== undefined) {
      faces.push(polyline([...seen, ...[...survived].reverse()], 'target-face', true));
    }
    for (const each of lines) for (const box of boxesAlong(each.points, 4)) free.keepFree(box);
    if (noise !== undefined) for (const box of boxesAlong(noise, 4)) free.keepFree(box);
  }
  return { faces, bars };
}

/** A bar with caps: the lower cap must be seen, the upper survived. A cap without a bar has no other end that is known. */
function lineBar(seen: Point | undefined, survived: Point | undefined) {
  const capped = (point: Point) => line(point[0] - cap, point[1], point[0] + cap, point[1], 'target');
  return [
    ...(seen === undefined ? [] : [capped(seen)]),
    ...(survived === undefined ? [] : [capped(survived)]),
    ...(seen === undefined || survived === undefined ? [] : [polyline([seen, survived], 'target')]),
  ];
}

function bandEdges(seen: readonly Point[] | undefined, survived: readonly Point[] | undefined) {
  const sides = seen === undefined || survived === undefined ? [] : [0, 1].map((end) => [seen[end]!, survived[end]!]);
  return [
    ...[seen, survived].flatMap((edge) => (edge === undefined ? [] : [polyline(edge, 'target')])),
    ...sides.map((side) => polyline(side, 'target-thin')),
  ];
}

/** The noise this very target is held against: a short line under a bar, a line through the band under a box. */
function noiseTick(noise: readonly Point[] | undefined): readonly Mark[] {
  const [first, second] = noise ?? [];
  if (first === undefined) return [];
  if (second !== undefined) return [polyline([first, second], 'floor-band')];
  return [line(first[0] - cap, first[1], first[0] + cap, first[1], 'floor')];
}

/** What each of the three scales is, above the frame. */
function captions({ plot, size, width: whole }: Layout, showing: Showing, width: Width): readonly Label[] {
  const unit = spelledUnit(velocityUnit(showing));
  const y = plot.y - 2.3 * size;
  const words =
    width === 'wide'
      ? [`velocity, ${unit} rms`, 'displacement, peak to peak (rising lines)', 'acceleration, peak (falling)']
      : [`${unit} rms`, 'displacement pp', 'acc. peak'];
  const put = (x: number, text: string, anchor: Label['anchor'], look: Label['look']) =>
    label(x, y, text, { size: size - 1, anchor, look });
  return [
    put(2, words[0]!, 'start', 'strong'),
    put(plot.x + plot.width / 2, words[1]!, 'middle', 'italic'),
    put(whole - 2, words[2]!, 'end', 'strong'),
  ];
}

function usableStrips(bands: readonly UsableBand[], { box, x, size }: Plot, layout: Layout, showing: Showing) {
  const row = 2.4 * size;
  const top = box.y + box.height + 2.1 * size;
  const marks = bands.flatMap((band, index): readonly Mark[] => {
    const y = top + index * row;
    const words = usableWords(band, showing, layout.width > 500);
    return [
      label(box.x, y + size, fitted(words, layout.width - box.x - 4, size - 1), { size: size - 1 }),
      line(box.x, y + 1.6 * size, box.x + box.width, y + 1.6 * size, 'grid'),
      ...band.stretches.map(({ low, high }) =>
        rectangle(x.at(low), y + 1.35 * size, x.at(high) - x.at(low), 0.5 * size, 'usable'),
      ),
    ];
  });
  return { marks, height: bands.length * row };
}

function chartInWords({ marks, notDrawn, floor, ceilings, frequencies }: AmplitudeContent, showing: Showing): string {
  const span = `${showQuantity('frequency', frequencies.low, showing)} to ${showQuantity('frequency', frequencies.high, showing)}`;
  const parts = [
    `Log frequency from ${span} by log velocity; lines of constant acceleration fall, lines of constant displacement rise.`,
    `${marks.length} targets as bars or boxes from what must be seen to what must be survived.`,
    floor === undefined ? 'No noise floor is drawn.' : `A full line is the ${floor.name}.`,
    ceilings.length === 0
      ? 'No ceiling is drawn.'
      : `A dash-dotted line is the lowest of these ceilings: ${ceilings.map((each) => each.name).join(', ')}.`,
    ...(notDrawn.length === 0 ? [] : [`Not drawn: ${notDrawn.map(({ name, why }) => `${name} (${why})`).join('; ')}.`]),
    'The numbers stand in the table beside it.',
  ];
  return parts.join(' ');
}
