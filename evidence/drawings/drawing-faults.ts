import type { Box, Circle, Drawing, Label, Look, Mark, Point } from '../../packages/documents/src/drawing/drawing.ts';
import { inside, labelBox, overlap } from '../../packages/documents/src/drawing/text-extent.ts';

/** What is wrong with a drawing, found by the boxes of its texts and the ways of its lines. */
export type DrawingFault =
  | 'texts touch'
  | 'leaves the sheet'
  | 'leaves its box'
  | 'line through text'
  | 'on a black face'
  | 'cut off';

export interface FoundFault {
  readonly fault: DrawingFault;
  readonly text: string;
  readonly other: string;
}

/** Faces that are filled dark: nothing can be read on them. */
const dark: ReadonlySet<Look> = new Set(['solid', 'usable', 'accent-solid']);
/** Faces without an edge of their own. */
const edgeless: ReadonlySet<Look> = new Set([...dark, 'target-face']);
/** Faces that hide what was drawn before them. */
const covering: ReadonlySet<Look> = new Set(['paper']);

export function drawingFaults(drawing: Drawing): readonly FoundFault[] {
  const sheet = { x: 0, y: 0, width: drawing.width, height: drawing.height };
  const labels = drawing.marks.flatMap((mark, at) => (mark.is === 'label' && mark.text !== '' ? [{ mark, at }] : []));
  return labels.flatMap(({ mark: one, at }, index) => {
    const found = (fault: DrawingFault, other = ''): FoundFault => ({ fault, text: one.text, other });
    const touched = labels.slice(index + 1).filter(({ mark }) => overlap(labelBox(one), labelBox(mark)));
    const letters = lettersOf(one);
    const through = drawing.marks.filter((mark, drawn) => {
      if (mark.is === 'label' || (one.cleared === true && drawn < at)) return false;
      return strokes(mark).some((each) => meets(each, letters)) && !hidden(drawing.marks, drawn, at, letters);
    });
    const boxed = drawing.marks.filter(
      (mark, drawn) => drawn < at && mark.is === 'rectangle' && mark.look === 'paper' && holdsStart(mark, one),
    ) as readonly Box[];
    const blackened = drawing.marks.filter((mark) => mark.is !== 'label' && blackens(mark, letters));
    return [
      ...touched.map(({ mark }) => found('texts touch', mark.text)),
      ...(inside(labelBox(one), sheet) ? [] : [found('leaves the sheet')]),
      ...boxed.filter((each) => !inside(letters, each)).map(() => found('leaves its box')),
      ...through.map((mark) => found('line through text', `${mark.is} ${'look' in mark ? mark.look : ''}`)),
      ...blackened.map(() => found('on a black face')),
      ...(one.text.endsWith('…') ? [found('cut off')] : []),
    ];
  });
}

/** Where ink certainly is: the box of the label without what its widest face would add. */
function lettersOf(of: Label): Box {
  const { x, width } = labelBox(of);
  const deep = /[gjpqy,;()[\]|/µ]/u.test(of.text) ? 0.18 : 0;
  const kept = width * 0.86;
  const left =
    of.anchor === 'start' ? x + 0.04 * of.size : of.anchor === 'end' ? x + width - kept : x + (width - kept) / 2;
  return { x: left, y: of.y - 0.7 * of.size, width: kept - 0.04 * of.size, height: (0.7 + deep) * of.size };
}

function holdsStart({ x, y, width, height }: Box, of: Label): boolean {
  const box = lettersOf(of);
  const [middleX, middleY] = [box.x + box.width / 2, box.y + box.height / 2];
  return middleX > x && middleX < x + width && middleY > y && middleY < y + height;
}

type Stroke = readonly [Point, Point];

function strokes(mark: Exclude<Mark, Label>): readonly Stroke[] {
  if (edgeless.has(mark.look)) return [];
  if (mark.is === 'circle') return around(circlePoints(mark));
  if (mark.is === 'polyline') {
    const open = mark.points.slice(1).map((to, index): Stroke => [mark.points[index]!, to]);
    return mark.closed === true ? around(mark.points) : open;
  }
  const [left, top, right, bottom] = [mark.x, mark.y, mark.x + mark.width, mark.y + mark.height];
  return around([
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ]);
}

function around(points: readonly Point[]): readonly Stroke[] {
  return points.map((from, index): Stroke => [from, points[(index + 1) % points.length]!]);
}

function circlePoints({ x, y, radius }: Circle): readonly Point[] {
  return Array.from({ length: 24 }, (_, step): Point => {
    const angle = (Math.PI * step) / 12;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

/** Whether a stretch of line enters a box: what is left of it within all four sides. */
export function meets([[x1, y1], [x2, y2]]: Stroke, { x, y, width, height }: Box): boolean {
  let [from, to] = [0, 1];
  for (const [start, step, low, high] of [
    [x1, x2 - x1, x, x + width],
    [y1, y2 - y1, y, y + height],
  ] as const) {
    if (step === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [one, other] = [(low - start) / step, (high - start) / step];
    from = Math.max(from, Math.min(one, other));
    to = Math.min(to, Math.max(one, other));
  }
  return from < to;
}

/** A face of paper drawn after the line and before the text takes the line away from under it. */
function hidden(marks: readonly Mark[], drawn: number, at: number, letters: Box): boolean {
  return marks
    .slice(drawn + 1, at)
    .some((mark) => mark.is === 'rectangle' && covering.has(mark.look) && inside(letters, mark));
}

function blackens(mark: Exclude<Mark, Label>, letters: Box): boolean {
  if (!dark.has(mark.look)) return false;
  if (mark.is === 'rectangle') return overlap(mark, letters);
  const points = mark.is === 'circle' ? circlePoints(mark) : mark.points;
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return overlap({ x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }, letters);
}
