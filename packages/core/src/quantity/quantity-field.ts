import { describe, type Field, type FieldOptions, symbolOf, textOf } from './field.ts';
import type { Showing } from './format.ts';
import { showLevel, showNumber, showQuantity, showSpan, showTolerance } from './format.ts';
import type { Level } from './level.ts';
import { parseLevel } from './level-text.ts';
import { expectedQuantity, parseQuantity } from './parse.ts';
import { type Quantity, type QuantityName, quantities } from './quantities.ts';
import { Refusal } from './refusal.ts';
import { parseSpan, parseTolerance, type Span, type Tolerance } from './span.ts';

const kelvinsPerDecade = 150;

function movedBy(name: QuantityName, value: number, decades: number): number {
  return name === 'temperature' ? value + kelvinsPerDecade * decades : value * 10 ** decades;
}

const textSchema = (description: string, example: string) => ({ type: 'string', description, examples: [example] });

export function quantityField<Name extends QuantityName>(
  name: Name,
  meaning: string,
  options: FieldOptions = {},
): Field<Quantity<Name>> {
  const expected = expectedQuantity(name);
  const example = options.example ?? exampleOf(name);
  const bare = name === 'ratio' || name === 'count';
  return {
    type: 'quantity',
    meaning,
    expected,
    example,
    ...symbolOf(options),
    schema: bare
      ? { type: ['number', 'string'], description: meaning }
      : textSchema(`${meaning} (${expected})`, example),
    read: (raw, writing) =>
      parseQuantity(bare && typeof raw === 'number' ? String(raw) : textOf(raw, expected), name, writing),
    show: (value, showing) => showQuantity(name, value, showing),
    json: (value) => ({ value, unit: quantities[name].unit, shown: showQuantity(name, value) }),
    varied: (value, decades) => movedBy(name, value, decades) as Quantity<Name>,
  };
}

function exampleOf(name: QuantityName): string {
  return `1 ${quantities[name].metric.at(-1)}`.replace(/ 1$/, '');
}

export function levelField<Name extends QuantityName>(
  names: readonly Name[],
  meaning: string,
  options: FieldOptions = {},
): Field<Level<Name>> {
  const example = options.example ?? '4.5 mm/s rms';
  const expected = `${names.join(' or ')} with unit and detector, such as '${example}'`;
  return {
    type: 'level',
    meaning,
    expected,
    example,
    ...symbolOf(options),
    schema: textSchema(`${meaning} (${expected})`, example),
    read: (raw, writing) => parseLevel(textOf(raw, expected), names, writing),
    show: (value, showing) => showLevel(value, showing),
    json: (value) => ({
      value: value.value,
      unit: quantities[value.quantity].unit,
      detector: value.detector,
      ...(value.band === undefined ? {} : { band: { ...value.band, unit: 'Hz' } }),
      shown: showLevel(value),
    }),
    varied: (value, decades) => ({ ...value, value: value.value * 10 ** decades }),
  };
}

export function spanField<Name extends QuantityName>(
  name: Name,
  meaning: string,
  options: FieldOptions = {},
): Field<Span<Name>> {
  const expected = `${expectedQuantity(name)}, from low to high`;
  const example = options.example ?? `1..2 ${quantities[name].metric.at(-1)}`;
  return {
    type: 'span',
    meaning,
    expected,
    example,
    ...symbolOf(options),
    schema: textSchema(`${meaning} (${expected})`, example),
    read: (raw, writing) => parseSpan(textOf(raw, expected), name, writing),
    show: (value, showing) => showSpan(name, value, showing),
    json: (value) => ({ low: value.low, high: value.high, unit: quantities[name].unit, shown: showSpan(name, value) }),
    varied: (value, decades) => ({
      low: movedBy(name, value.low, decades) as Quantity<Name>,
      high: movedBy(name, value.high, decades) as Quantity<Name>,
    }),
  };
}

export function toleranceField(meaning: string, options: FieldOptions = {}): Field<Tolerance> {
  const expected = "a tolerance such as '±10 %', '+41/-29 %' or '±3 dB'";
  return {
    type: 'tolerance',
    meaning,
    expected,
    example: options.example ?? '±10 %',
    ...symbolOf(options),
    schema: textSchema(`${meaning} (${expected})`, options.example ?? '±10 %'),
    read: (raw, writing) => parseTolerance(textOf(raw, expected), writing),
    show: (value, showing) => showTolerance(value, showing),
    json: (value) => ({ low: value.low, high: value.high, unit: '1', shown: showTolerance(value) }),
    varied: (value, decades) => ({ low: value.low * 10 ** decades, high: value.high * 10 ** decades }),
  };
}

/** A spectral curve given by points, in ascending frequency. */
export interface Curve {
  readonly frequencies: readonly number[];
  readonly densities: readonly number[];
}

/** Points `1 Hz: 30 ug/rtHz` of a noise density; between them it is read on log-log paper. */
export function curveField<Name extends QuantityName>(name: Name, meaning: string): Field<Curve> {
  const expected = `a mapping from frequency to ${name}, such as '10 Hz: 8 ${quantities[name].metric.at(-1)}'`;
  return {
    type: 'curve',
    meaning,
    expected,
    example: `{10 Hz: 8 ${quantities[name].metric.at(-1)}}`,
    schema: { type: 'object', description: `${meaning} (${expected})`, additionalProperties: { type: 'string' } },
    read: (raw, writing) => {
      if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
        throw new Refusal({ read: describe(raw), expected });
      }
      const points = Object.entries(raw).map(([frequency, density]) => ({
        frequency: parseQuantity(frequency, 'frequency', writing) as number,
        density: parseQuantity(textOf(density, expected), name, writing) as number,
      }));
      if (points.length === 0) throw new Refusal({ read: 'an empty mapping', expected });
      points.sort((a, b) => a.frequency - b.frequency);
      const bad = points.find((point) => !(point.frequency > 0 && point.density > 0));
      if (bad !== undefined) {
        throw new Refusal({ read: `${bad.frequency} Hz: ${bad.density}`, expected: `${expected}, both above zero` });
      }
      return { frequencies: points.map((p) => p.frequency), densities: points.map((p) => p.density) };
    },
    show: (value, showing) =>
      value.frequencies
        .map((f, i) => `${showQuantity('frequency', f, showing)}: ${showQuantity(name, value.densities[i]!, showing)}`)
        .join(', '),
    json: (value) => ({ ...value, unit: quantities[name].unit }),
    varied: (value, decades) => ({ ...value, densities: value.densities.map((each) => each * 10 ** decades) }),
  };
}

/** A plain number or what a formula calls a ratio, shown with few digits. */
export function numberField(meaning: string, options: FieldOptions = {}): Field<number> {
  return {
    ...quantityField('ratio', meaning, options),
    show: (value: number, showing?: Showing) => showNumber(value, showing?.digits, showing?.decimal),
  } as Field<number>;
}
