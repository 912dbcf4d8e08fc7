import type { Drawing } from '../../packages/documents/src/drawing/drawing.ts';
import type { StandingDrawing } from './every-drawing.ts';

/** Sides of A4 and the margins of a page, as the typesetter's template has them, in millimetres. */
const a4 = { short: 210, long: 297 };
const margins = 28;
const millimetresInPoint = 25.4 / 72;

/** Height of a capital of the shipped face in parts of its size: `sCapHeight` over `unitsPerEm` of its OS/2 and head tables. */
const capital = 1490 / 2048;

/** How many millimetres of an A4 page one unit of a drawing becomes, by the rule of the template. */
export function millimetresPerUnit({ drawing, on }: StandingDrawing): number {
  const [across, high] = on === 'landscape' ? [a4.long, a4.short] : [a4.short, a4.long];
  const text = across - margins;
  const { width, height } = drawing;
  const wanted = width >= 500 ? text : Math.min(text, width * 0.75 * millimetresInPoint);
  const most = high * (on === 'landscape' ? 0.62 : 0.6);
  return Math.min(wanted, (most * width) / height) / width;
}

/** Heights of the capitals of a drawing's texts on A4, with each text, from the lowest. */
export function letterHeights(
  standing: StandingDrawing,
): readonly { readonly text: string; readonly height: number }[] {
  const scale = millimetresPerUnit(standing);
  return labelsOf(standing.drawing)
    .map(({ text, size }) => ({ text, height: size * capital * scale }))
    .sort((one, other) => one.height - other.height);
}

export function labelsOf({ marks }: Drawing) {
  return marks.flatMap((mark) => (mark.is === 'label' && mark.text !== '' ? [mark] : []));
}
