import { plotted } from '../drawing/curve.ts';
import { type Label, label } from '../drawing/drawing.ts';
import type { Placing } from '../drawing/label-placing.ts';
import type { Plot } from '../drawing/plot.ts';
import { textWidth } from '../drawing/text-extent.ts';
import {
  type AmplitudeContent,
  edges,
  isLine,
  lowestCeiling,
  type TargetMark,
  velocityOf,
} from './amplitude-content.ts';

/** Among more bars than this a name could stand nearer to a strange bar than to its own. */
const mostNamed = 7;

/** Each target by number and name where there is room for both, by its number where there is room for that. */
export function targetLabels(marks: readonly TargetMark[], plot: Plot, free: Placing): readonly Label[] {
  const { size } = plot;
  // Lines first: a box has more places to choose from.
  const order = [...marks].sort((a, b) => Number(isLine(b.target)) - Number(isLine(a.target)));
  return order.flatMap((mark) => {
    const name = `${mark.number} ${mark.target.name}`;
    const tooLong = textWidth(name, size) > plot.box.width / (isLine(mark.target) ? 2.4 : 1.8);
    const byName = tooLong || (isLine(mark.target) && marks.length > mostNamed) ? [] : placesOf(mark, name, plot);
    return free.place([...byName, ...placesOf(mark, String(mark.number), plot)]) ?? [];
  });
}

function placesOf(mark: TargetMark, text: string, plot: Plot): readonly Label[] {
  return isLine(mark.target) ? besideBar(mark, text, plot) : alongBox(mark, text, plot);
}

function accented({ size }: Plot, text: string) {
  return (x: number, y: number, anchor: Label['anchor']) =>
    label(x, y, text, { size, anchor, look: 'accent', cleared: true });
}

const anchors: readonly Label['anchor'][] = ['middle', 'start', 'end'];

/** Above the upper cap, under the lower one, beside the bar, then farther above and below. */
function besideBar(mark: TargetMark, text: string, plot: Plot): readonly Label[] {
  const { size } = plot;
  const put = accented(plot, text);
  const { low: frequency } = mark.band;
  const x = plot.x.at(frequency);
  const top = plot.y.at(velocityOf(mark.largest ?? mark.smallest!, frequency));
  const bottom = plot.y.at(velocityOf(mark.smallest ?? mark.largest!, frequency));
  const about = (y: number) => anchors.map((anchor) => put(x, y, anchor));
  const aside = [0.25, 0.5, 0.75, 0.1, 0.9].flatMap((share) => {
    const y = top + (bottom - top) * share + 0.3 * size;
    return [put(x + 7, y, 'start'), put(x - 7, y, 'end')];
  });
  return [
    ...about(top - 0.5 * size),
    ...about(bottom + 1.3 * size),
    ...aside,
    ...[2.6, 3.9, 5.2].flatMap((step) => about(bottom + step * size)),
    ...[2, 3.3, 4.6].flatMap((step) => about(top - step * size)),
  ];
}

/** Along the upper edge outside and inside, then along the lower edge. */
function alongBox(mark: TargetMark, text: string, plot: Plot): readonly Label[] {
  const { size } = plot;
  const put = accented(plot, text);
  const [from, to] = edges(mark) as [number, number];
  const along = (edge: NonNullable<TargetMark['largest']>, lift: number) =>
    [0.02, 0.1, 0.3, 0.5, 0.7, 0.85].map((share) => {
      const frequency = from * (to / from) ** share;
      return put(plot.x.at(frequency) + 4, plot.y.at(velocityOf(edge, frequency)) + lift * size, 'start');
    });
  const top = mark.largest ?? mark.smallest!;
  const low = mark.smallest ?? mark.largest!;
  return [
    ...along(top, -0.5),
    ...along(top, 1.4),
    ...[-1.8, -3.1, -4.4].flatMap((lift) => along(top, lift)),
    ...along(top, 3.2),
    ...[-0.6, 1.5, 2.8, 4.1].flatMap((lift) => along(low, lift)),
  ];
}

/** What the lines are: the floor, the noise under each band, the ceiling by the limits that make it. */
export function curveLabels(content: AmplitudeContent, plot: Plot, free: Placing): readonly Label[] {
  const { floor, ceilings, marks } = content;
  const found: (Label | undefined)[] = [];
  if (floor !== undefined) {
    const words = [floor.name, 'noise floor', 'floor'];
    found.push(free.place(alongCurve(words, floor.at, [-0.7, 1.5, -1.8, 2.6], content, plot)));
  }
  for (const mark of marks) {
    const { noise } = mark;
    if (noise === undefined || isLine(mark.target)) continue;
    found.push(free.place(underBand(mark, noise, `noise under ${mark.number}`, plot)));
  }
  if (ceilings.length > 0) {
    const top = (frequency: number) => lowestCeiling(ceilings, frequency);
    const words = [`ceiling: ${governing(content).join(', then ')}`, 'ceiling of the chain', 'ceiling'];
    found.push(free.place(alongCurve(words, top, [-0.8, 1.6, -1.9, 2.8, 4.2, 6], content, plot)));
  }
  return found.flatMap((each) => each ?? []);
}

function underBand(
  mark: TargetMark,
  noise: NonNullable<TargetMark['noise']>,
  text: string,
  { x, y, size }: Plot,
): readonly Label[] {
  const [from, to] = edges(mark) as [number, number];
  return [-0.5, 1.3, 2.4, -1.6].flatMap((lift) =>
    [0.4, 0.15, 0.6, 0.02, 0.8].map((share) => {
      const frequency = from * (to / from) ** share;
      return label(x.at(frequency), y.at(velocityOf(noise, frequency)) + lift * size, text, {
        size,
        look: 'quiet',
        cleared: true,
      });
    }),
  );
}

/** How far along a curve its name may stand, from the middle of the picture outwards. */
const shares = Array.from({ length: 21 }, (_, index) => 0.04 + index * 0.046).sort(
  (a, b) => Math.abs(a - 0.45) - Math.abs(b - 0.45),
);

/** Places along a curve, for the first of the texts before the next; made as they are tried, since the first often is free. */
function* alongCurve(
  texts: readonly string[],
  value: (frequency: number) => number | undefined,
  lifts: readonly number[],
  { frequencies }: AmplitudeContent,
  { x, y, size }: Plot,
): Generator<Label> {
  for (const text of texts) {
    for (const lift of lifts) {
      for (const share of shares) {
        const frequency = frequencies.low * (frequencies.high / frequencies.low) ** share;
        const velocity = value(frequency);
        if (velocity === undefined) continue;
        yield label(x.at(frequency), y.at(velocity) + lift * size, text, { size, cleared: true });
      }
    }
  }
}

/** The ceilings that are the lowest somewhere in the picture, in the order in which they take over. */
export function governing({ ceilings, frequencies }: AmplitudeContent): readonly string[] {
  const names: string[] = [];
  for (const frequency of plotted(frequencies.low, frequencies.high, [], 60)) {
    const limit = lowestCeiling(ceilings, frequency);
    const name = ceilings.find((each) => limit !== undefined && each.at(frequency) === limit)?.name;
    if (name !== undefined && !names.includes(name)) names.push(name);
  }
  return names;
}
