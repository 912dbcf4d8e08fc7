import { type DesignedPoint, type Judgement, type Showing, showQuantity, type Target } from '@soundpost/core';
import { type Ends, linearAxis, logAxis } from '../drawing/axis.ts';
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
import { amplitudeContent } from './amplitude-content.ts';
import { responseSize } from './usable-band.ts';

const layouts: Readonly<Record<Width, { width: number; plot: Box; size: number }>> = {
  wide: { width: 760, plot: { x: 58, y: 30, width: 690, height: 260 }, size: 12 },
  narrow: { width: 358, plot: { x: 40, y: 26, width: 312, height: 210 }, size: 10 },
};

/** Decibels of an amplitude ratio: the scale of this plot. */
const inDecibels = (ratio: number) => 20 * Math.log10(ratio);

/** The predicted response against frequency, with the window each target leaves it. */
export function responsePlot(designed: DesignedPoint, showing: Showing, width: Width): Drawing | undefined {
  const { appraisal, point } = designed;
  const size = appraisal === undefined ? undefined : responseSize(appraisal.prediction);
  if (appraisal === undefined || size === undefined) return undefined;
  const { frequencies, features } = amplitudeContent(designed);
  const layout = layouts[width];
  const { plot: box } = layout;
  const reach = reachOf(point.targets);
  const plot: Plot = {
    box,
    size: layout.size,
    x: logAxis(frequencies, { from: box.x, to: box.x + box.width }, 10 * layout.size),
    y: linearAxis({ low: -reach, high: reach }, { from: box.y + box.height, to: box.y }, 10),
  };
  const curve = plotted(frequencies.low, frequencies.high, features, 240).map((frequency): Point | undefined => {
    const ratio = size(frequency);
    return ratio > 0 ? [plot.x.at(frequency), plot.y.at(inDecibels(ratio))] : undefined;
  });
  const parts = between(curve, box.y, box.y + box.height);
  const free = placing(box);
  for (const points of parts) for (const each of boxesAlong(points, 4)) free.keepFree(each);
  const windows = windowMarks(point.targets, plot, free, layout.size);
  return {
    width: layout.width,
    height: box.y + box.height + 2 * layout.size + 2,
    title: `Response of the chain at ${point.of}`,
    description: responseInWords(appraisal.judgements, showing),
    marks: [
      ...grid(plot),
      line(box.x, plot.y.at(0), box.x + box.width, plot.y.at(0), 'thin'),
      ...windows.marks,
      ...parts.map((points) => polyline(points, 'curve')),
      ...worstMarks(appraisal.judgements, plot),
      frame(plot),
      ...axisNumbers(plot),
      label(2, box.y - 0.9 * layout.size, 'indicated over true motion, dB', { size: layout.size - 1, look: 'strong' }),
      ...windows.labels,
    ],
  };
}

/** Twice the widest window, in steps of 3 dB, so that the windows fill the middle of the plot. */
function reachOf(targets: readonly Target[]): number {
  const allowed = targets.flatMap(({ tolerance }) =>
    tolerance.known
      ? [inDecibels(1 + tolerance.value.high), tolerance.value.low > -1 ? -inDecibels(1 + tolerance.value.low) : 0]
      : [],
  );
  return Math.min(30, 3 * Math.max(1, Math.ceil((2 * Math.max(0, ...allowed)) / 3)));
}

function windowMarks(targets: readonly Target[], plot: Plot, free: Placing, size: number) {
  const marks: Mark[] = [];
  const wanted: { readonly places: readonly Label[] }[] = [];
  for (const [index, target] of targets.entries()) {
    if (!target.tolerance.known || !target.band.known || target.observable.atRest) continue;
    const { low, high } = target.tolerance.value;
    const ends = windowEnds(low, high, plot.y);
    const [top, bottom] = [plot.y.at(ends.high), plot.y.at(ends.low)];
    const number = String(index + 1);
    const places = target.observable.scansBand
      ? [{ from: target.band.value.low, to: target.band.value.high }]
      : target.frequencies.known
        ? target.frequencies.value.map((f) => ({ from: f, to: f }))
        : [];
    for (const { from, to } of places.filter((each) => each.from > 0)) {
      const half = from === to ? 4 : 0;
      const [left, right] = [plot.x.at(from) - half, plot.x.at(to) + half];
      marks.push(rectangle(left, top, right - left, bottom - top, 'window'));
      const tell = (x: number, y: number, anchor: Label['anchor']) =>
        label(x, y, number, { size, anchor, look: 'accent', cleared: true });
      const middle = (left + right) / 2;
      wanted.push({
        places: [0.5, 1.7, 2.9, 4.1, 5.3].flatMap((lift) => [
          tell(middle, top - lift * size, 'middle'),
          tell(middle, bottom + (lift + 0.8) * size, 'middle'),
        ]),
      });
    }
  }
  return { marks, labels: wanted.flatMap(({ places }) => free.place(places) ?? []) };
}

function windowEnds(low: number, high: number, ends: Ends): Ends {
  return {
    low: low > -1 ? Math.max(ends.low, inDecibels(1 + low)) : ends.low,
    high: Math.min(ends.high, inDecibels(1 + high)),
  };
}

/** A ring where each target was found worst, as the rule of the response says. */
function worstMarks(judgements: readonly Judgement[], plot: Plot): readonly Mark[] {
  return judgements.flatMap(({ rule, frequency, found }): readonly Mark[] => {
    if (rule !== 'chain/response' || frequency === undefined || found.is !== 'quantity') return [];
    const decibels = inDecibels(1 + found.value);
    if (!(frequency >= plot.x.low && frequency <= plot.x.high && Math.abs(decibels) <= plot.y.high)) return [];
    return [{ is: 'circle', x: plot.x.at(frequency), y: plot.y.at(decibels), radius: 3.4, look: 'ink' }];
  });
}

function responseInWords(judgements: readonly Judgement[], showing: Showing): string {
  const worst = judgements.flatMap(({ rule, target, frequency, found, limit }) =>
    rule === 'chain/response' && frequency !== undefined && found.is === 'quantity' && limit.is === 'words'
      ? [
          `${target}: ${showQuantity('fraction', found.value, showing)} at ${showQuantity('frequency', frequency, showing)}, allowed ${limit.words}`,
        ]
      : [],
  );
  return `Indicated over true motion in decibels over log frequency, with the window of each target. Worst found: ${worst.join('; ')}.`;
}
