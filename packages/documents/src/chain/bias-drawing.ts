import { type DesignedPoint, type Showing, showQuantity } from '@soundpost/core';
import { linearAxis } from '../drawing/axis.ts';
import { type Drawing, type Look, label, line, type Mark, rectangle, type Width } from '../drawing/drawing.ts';
import { fitted, textWidth } from '../drawing/text-extent.ts';

const layouts: Readonly<Record<Width, { width: number; left: number; right: number; row: number; size: number }>> = {
  wide: { width: 760, left: 270, right: 24, row: 26, size: 12 },
  narrow: { width: 358, left: 12, right: 20, row: 36, size: 10.5 },
};

interface Row {
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly look: Look;
}

/** Where the output stands between ground and supply, as bars over a scale of volts: what is taken, and what is left. */
export function biasDrawing({ point, appraisal }: DesignedPoint, showing: Showing, width: Width): Drawing | undefined {
  const prediction = appraisal?.prediction;
  const biased = prediction?.chain.transducer.biased;
  const current = prediction?.chain.fedBy;
  if (prediction?.bias?.known !== true || biased?.saturation.known !== true || current?.compliance.known !== true)
    return undefined;
  const { low, high, lineDrop, swing } = prediction.bias.value;
  const top = high + swing.top;
  const compliance = current.compliance.value;
  const rows: readonly Row[] = [
    { name: 'saturation: not below', low: 0, high: biased.saturation.value, look: 'hatched' },
    { name: 'swing down, lowest bias', low: low - swing.bottom, high: low, look: 'window' },
    { name: 'bias, lowest to highest piece', low, high, look: 'solid' },
    { name: 'swing up, highest bias', low: high, high: top, look: 'window' },
    { name: `line (${volts(lineDrop, showing)}) and source take`, low: top, high: compliance, look: 'hatched' },
  ];
  const layout = layouts[width];
  const { size, row } = layout;
  const axis = linearAxis(
    { low: Math.min(0, ...rows.map((each) => each.low)), high: Math.max(compliance, high) * 1.06 },
    { from: layout.left, to: layout.width - layout.right },
    8,
  );
  const above = 4;
  const bottom = above + rows.length * row + 4;
  const wide = width === 'wide';
  const marks = rows.flatMap((each, index): readonly Mark[] => {
    const y = above + index * row;
    const [from, to] = [axis.at(Math.min(each.low, each.high)), axis.at(Math.max(each.low, each.high))];
    const bar = wide ? y + 0.2 * row : y + 0.5 * row;
    const value = each.high < each.low ? `none: ${span(each, showing)}` : span(each, showing);
    if (!wide) {
      const text = fitted(`${each.name}: ${value}`, layout.width - layout.left - 4, size);
      return [
        rectangle(from, bar, Math.max(1.5, to - from), row * 0.4, each.look),
        label(layout.left, y + 0.38 * row, text, { size, cleared: true }),
      ];
    }
    const beside = to + 8 + textWidth(value, size) <= layout.width - layout.right;
    return [
      rectangle(from, bar, Math.max(1.5, to - from), row * 0.6, each.look),
      label(layout.left - 14, y + row / 2 + 0.35 * size, fitted(each.name, layout.left - 18, size), {
        size,
        anchor: 'end',
      }),
      label(beside ? to + 8 : from - 8, y + row / 2 + 0.35 * size, value, {
        size,
        anchor: beside ? 'start' : 'end',
        cleared: true,
      }),
    ];
  });
  return {
    width: layout.width,
    height: bottom + 1.9 * size,
    title: `Bias and headroom at ${point.of}`,
    description: rows.map((each) => `${each.name}: ${span(each, showing)}`).join('; '),
    marks: [
      ...axis.ticks.map((tick) => line(tick.at, above, tick.at, bottom, 'grid')),
      ...marks,
      line(axis.at(axis.low), bottom, axis.at(axis.high), bottom, 'thin'),
      ...axis.ticks.map((tick) => label(tick.at, bottom + 1.3 * size, `${tick.text} V`, { size, anchor: 'middle' })),
    ],
  };
}

function volts(value: number, showing: Showing): string {
  return showQuantity('voltage', value, { ...showing, digits: 3 });
}

function span({ low, high }: Row, showing: Showing): string {
  return `${volts(low, showing)} to ${volts(high, showing)}`;
}
