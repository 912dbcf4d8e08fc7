import {
  type Field,
  type Fields,
  fieldOf,
  kebab,
  type Level,
  type Output,
  type Showing,
  showNumber,
} from '@soundpost/core';
import { markupOf, svg } from '@soundpost/documents';
import { readInputs, refusalWords, writing } from './worked.ts';
import { type Curve, resultDrawing } from './working-drawing.ts';
import type { PlotAsked, PlotView } from './working-views.ts';

const samples = 120;
const rows = 10;

/** A result drawn against one of the inputs, the others as they stand in the form. */
export function workingPlot(asked: PlotAsked, showing: Showing): PlotView {
  const { working, values, refused } = readInputs(asked);
  const inputs = working.inputs as Fields;
  const key = Object.keys(inputs).find((each) => kebab(each) === asked.input);
  const output = Object.entries(working.outputs as Readonly<Record<string, Output<unknown>>>).find(
    ([each]) => kebab(each) === asked.output,
  );
  if (key === undefined || output === undefined || values[key] === undefined || Object.keys(refused).length > 0) {
    return { refused: 'The drawing waits for fields that can be read.', at: 'whole' };
  }
  const field = fieldOf(inputs[key]!);
  const range = rangeOf(field, values[key], asked);
  if ('refused' in range) return range;
  const result = (value: unknown): number | undefined => {
    try {
      field.read(field.show(value), writing);
      const found = (working.evaluate({ ...values, [key]: value }) as Record<string, unknown>)[output[0]];
      return found === undefined ? undefined : numberOf(output[1].field.json(found));
    } catch (error) {
      refusalWords(error);
      return undefined;
    }
  };
  const at = range.at.map((value) => ({ value: range.value(value), x: value }));
  const points = at.map(({ value, x }) => ({ x, y: result(value) }));
  if (points.every(({ y }) => y === undefined)) {
    return { refused: 'The formula gives no result in this range.', at: 'whole' };
  }
  const stated = { x: range.stated, y: result(values[key]) };
  const curve: Curve = {
    title: `${output[1].field.meaning} against ${field.meaning}`,
    points,
    stated,
    logarithmic: range.logarithmic,
    across: range.factor
      ? { unit: timesStated(field.show(values[key], showing)), factor: 1, offset: 0 }
      : scaleOf(field, values[key], showing),
    up: scaleOf(output[1].field, middle(working.evaluate, values, output[0]), showing),
    symbol: output[1].field.symbol ?? output[1].field.meaning,
    decimal: showing.decimal ?? 'point',
  };
  const drawn = (width: 'wide' | 'narrow') => markupOf(svg(resultDrawing(curve, width), `working-${width}`));
  return {
    wide: drawn('wide'),
    narrow: drawn('narrow'),
    input: field.meaning,
    output: output[1].field.meaning,
    inputSymbol: field.symbol,
    outputSymbol: output[1].field.symbol,
    rows: tableOf(at, range.stated).map(({ value, x }) => {
      const found = result(value);
      return {
        input: range.factor ? moved(field.show(value, showing), x, showing) : field.show(value, showing),
        output:
          found === undefined
            ? 'no result'
            : shownResult(working.evaluate, { ...values, [key]: value }, output, showing),
        stated: x === range.stated,
      };
    }),
  };
}

/** Longer than this a value is no label: a table of a curve. */
const longestLabel = 18;

/** A value that is not one number, such as a tolerance, as it stands after it was moved; a curve by how far it was. */
function moved(shown: string, times: number, { decimal }: Showing): string {
  return shown.length <= longestLabel ? shown : `${showNumber(times, 3, decimal)} times as stated`;
}

function timesStated(shown: string): string {
  return shown.length <= longestLabel ? `times ${shown}` : 'times as stated';
}

type Evaluate = (values: Readonly<Record<string, unknown>>) => unknown;

function middle(evaluate: Evaluate, values: Readonly<Record<string, unknown>>, name: string): unknown {
  return (evaluate(values) as Record<string, unknown>)[name];
}

function shownResult(
  evaluate: Evaluate,
  values: Readonly<Record<string, unknown>>,
  [name, { field }]: readonly [string, Output<unknown>],
  showing: Showing,
): string {
  return field.show((evaluate(values) as Record<string, unknown>)[name], showing);
}

/** Rows at even distances, and the one of the value that stands in the form. */
function tableOf<T extends { readonly x: number }>(at: readonly T[], stated: number): readonly T[] {
  const shown = new Set(Array.from({ length: rows + 1 }, (_, row) => Math.round((row * (at.length - 1)) / rows)));
  return at.filter(({ x }, index) => shown.has(index) || x === stated);
}

interface Range {
  readonly at: readonly number[];
  readonly stated: number;
  readonly logarithmic: boolean;
  /** Whether the numbers multiply what was typed, as for a tolerance. */
  readonly factor: boolean;
  value(x: number): unknown;
}

type Refused = { readonly refused: string; readonly at: 'from' | 'to' | 'whole' };

/** What the input takes in turn: from end to end as typed, or a decade to each side of where it stands. */
function rangeOf(field: Field<unknown>, value: unknown, asked: PlotAsked): Range | Refused {
  const own = axisOf(field, value);
  const ends: number[] = [];
  for (const end of ['from', 'to'] as const) {
    const text = asked[end].trim();
    if (text === '') ends.push(own.usual[end]);
    else {
      try {
        ends.push(own.read(text));
      } catch (error) {
        return { refused: refusalWords(error), at: end };
      }
    }
  }
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  if (!(high - low > 1e-6 * Math.max(Math.abs(low), Math.abs(high)))) {
    return { refused: 'Type two ends that lie apart; about zero there is no decade to go by.', at: 'whole' };
  }
  const logarithmic = low > 0 && high / low >= 4;
  const even = Array.from({ length: samples + 1 }, (_, index) => {
    const share = index / samples;
    return logarithmic ? low * (high / low) ** share : low + (high - low) * share;
  });
  const whole = field.type === 'count' ? even.map(Math.round) : even;
  const within = own.stated >= low && own.stated <= high ? [own.stated] : [];
  const at = [...new Set([...withoutTwin(whole, own.stated), ...within])].sort((a, b) => a - b);
  return { at, stated: own.stated, logarithmic, factor: own.factor, value: own.value };
}

/** Without those that are the stated value but for rounding. */
function withoutTwin(values: readonly number[], stated: number): readonly number[] {
  return values.filter((each) => Math.abs(each - stated) > 1e-9 * Math.abs(stated));
}

function axisOf(field: Field<unknown>, value: unknown) {
  const decade = (by: number) => field.varied?.(value, by) ?? value;
  if (field.type === 'level') {
    const level = value as Level;
    return {
      stated: level.value,
      factor: false,
      usual: { from: level.value / 10, to: level.value * 10 },
      read: (text: string) => (field.read(text, writing) as Level).value,
      value: (x: number): unknown => ({ ...level, value: x }),
    };
  }
  if (field.type === 'quantity' || field.type === 'count') {
    const stated = value as number;
    const count = field.type === 'count';
    return {
      stated,
      factor: false,
      usual: count
        ? { from: Math.min(stated, Math.max(1, Math.floor(stated / 3))), to: Math.max(stated * 3, stated + 3) }
        : { from: decade(-1) as number, to: decade(1) as number },
      read: (text: string) => field.read(text, writing) as number,
      value: (x: number): unknown => x,
    };
  }
  return {
    stated: 1,
    factor: true,
    usual: { from: 0.1, to: 10 },
    read: (text: string) => Number(text.replace('×', '')),
    value: (x: number): unknown => field.varied?.(value, Math.log10(x)) ?? value,
  };
}

/** The unit a value is shown in, and what turns the coherent number into it. */
export interface Scale {
  readonly unit: string;
  readonly factor: number;
  readonly offset: number;
}

/** Read off the field itself: what one and two of the unit it shows are in the coherent one. */
function scaleOf(field: Field<unknown>, value: unknown, showing: Showing): Scale {
  const tail = field.show(value, { ...showing, decimal: 'point' }).replace(/^[−\-\d.e+]+ ?/, '');
  const unit = tail.replace(/ ?\b(rms|peak|pp|derived peak|average)\b.*$/, '');
  try {
    const [one, two] = [1, 2].map((count) => numberOf(field.json(field.read(`${count} ${tail}`.trim(), writing))));
    if (one !== undefined && two !== undefined && two !== one) {
      return { unit, factor: two - one, offset: 2 * one - two };
    }
  } catch (error) {
    refusalWords(error);
  }
  return { unit: (field.json(value) as { unit?: string }).unit ?? '', factor: 1, offset: 0 };
}

function numberOf(json: unknown): number | undefined {
  const value = (json as { value?: unknown } | undefined)?.value;
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}
