import {
  type Level,
  type QuantityName,
  quantities,
  type Showing,
  type Span,
  showDecibels,
  showLengthDown,
  showLevel,
  showNumber,
  showPercent,
  showQuantity,
  showSpan,
  showTolerance,
  type Tolerance,
} from '../quantity/index.ts';

/**
 * Something somebody will read: a number with its quantity, its detector where it is an amplitude, a range, a tolerance,
 * decibels, plain words, or words with such numbers among them. It becomes text only at the door, where the reader's
 * units and decimal sign are known.
 */
export type Measure =
  | { readonly is: 'quantity'; readonly quantity: QuantityName; readonly value: number; readonly digits?: number }
  | { readonly is: 'span'; readonly quantity: QuantityName; readonly low: number; readonly high: number }
  /** A length that must not be exceeded: whole units, rounded down. */
  | { readonly is: 'longest'; readonly length: number }
  | { readonly is: 'level'; readonly level: Level }
  | { readonly is: 'tolerance'; readonly tolerance: Tolerance }
  | { readonly is: 'decibels'; readonly value: number }
  /** A fraction in per cent, with its sign: `+3.2 %`. */
  | { readonly is: 'change'; readonly fraction: number }
  /** A number without a unit, or with one that is the same in every system and stands in the words. */
  | { readonly is: 'number'; readonly value: number; readonly digits?: number }
  | { readonly is: 'words'; readonly words: string }
  | { readonly is: 'said'; readonly parts: readonly Said[] };

/** A sentence or a piece of one: plain text, or what is to be shown in the reader's units. */
export type Said = Measure | string;

export function measured(quantity: QuantityName, value: number, digits?: number): Measure {
  return { is: 'quantity', quantity, value, ...(digits === undefined ? {} : { digits }) };
}

export function measuredSpan(quantity: QuantityName, { low, high }: Readonly<Record<'low' | 'high', number>>): Measure {
  return { is: 'span', quantity, low, high };
}

export function measuredDown(length: number): Measure {
  return { is: 'longest', length };
}

export function measuredLevel(level: Level): Measure {
  return { is: 'level', level };
}

export function measuredTolerance(tolerance: Tolerance): Measure {
  return { is: 'tolerance', tolerance };
}

export function decibels(value: number): Measure {
  return { is: 'decibels', value };
}

export function measuredChange(fraction: number): Measure {
  return { is: 'change', fraction };
}

export function bareNumber(value: number, digits?: number): Measure {
  return { is: 'number', value, ...(digits === undefined ? {} : { digits }) };
}

export function inWords(words: string): Measure {
  return { is: 'words', words };
}

/**
 * Words with numbers among them, as they stand in a template: said`a float of ${measured('length', float)}`. A plain
 * number that is not whole is shown with the reader's decimal sign.
 */
export function said(words: TemplateStringsArray, ...numbers: readonly (Said | number)[]): Measure {
  const parts = words.flatMap((text, index) => {
    const number = numbers[index];
    return number === undefined ? [text] : [text, typeof number === 'number' ? plainNumber(number) : number];
  });
  return inOne(parts);
}

function plainNumber(number: number): Said {
  return Number.isInteger(number) ? String(number) : bareNumber(number);
}

/** Several pieces as one, with a mark between them as in `a; b; c`. */
export function saidTogether(pieces: readonly Said[], between: string): Measure {
  return inOne(pieces.flatMap((each, index) => (index === 0 ? [each] : [between, each])));
}

function inOne(parts: readonly Said[]): Measure {
  const flat = parts.flatMap((each) => (typeof each === 'object' && each.is === 'said' ? each.parts : [each]));
  if (flat.every((each) => typeof each === 'string')) return inWords(flat.join(''));
  return { is: 'said', parts: flat.filter((each) => each !== '') };
}

export function showMeasure(measure: Said, showing: Showing = {}): string {
  if (typeof measure === 'string') return measure;
  switch (measure.is) {
    case 'quantity':
      return showQuantity(measure.quantity, measure.value, withDigits(showing, measure.digits));
    case 'span':
      return showSpan(measure.quantity, measure as unknown as Span, showing);
    case 'longest':
      return showLengthDown(measure.length, showing);
    case 'level':
      return showLevel(measure.level, showing);
    case 'tolerance':
      return showTolerance(measure.tolerance, showing);
    case 'decibels':
      return showDecibels(measure.value, 1, showing.decimal);
    case 'change':
      return showPercent(measure.fraction, 3, showing.decimal);
    case 'number':
      return showNumber(measure.value, measure.digits ?? showing.digits, showing.decimal);
    case 'words':
      return measure.words;
    case 'said':
      return measure.parts.map((each) => showMeasure(each, showing)).join('');
  }
}

function withDigits(showing: Showing, digits: number | undefined): Showing {
  return digits === undefined ? showing : { ...showing, digits };
}

/** The measure for scripts: SI value, unit, detector where there is one, and the text shown. */
export function measureJson(measure: Said): unknown {
  const shown = showMeasure(measure);
  if (typeof measure === 'string') return { shown };
  switch (measure.is) {
    case 'words':
    case 'said':
      return { shown };
    case 'quantity':
      return { value: measure.value, unit: quantities[measure.quantity].unit, shown };
    case 'span':
      return { low: measure.low, high: measure.high, unit: quantities[measure.quantity].unit, shown };
    case 'longest':
      return { value: measure.length, unit: quantities.length.unit, shown };
    case 'tolerance':
      return { low: measure.tolerance.low, high: measure.tolerance.high, unit: '1', shown };
    case 'decibels':
      return { value: measure.value, unit: 'dB', shown };
    case 'change':
      return { value: measure.fraction, unit: '1', shown };
    case 'number':
      return { value: measure.value, unit: '1', shown };
    case 'level': {
      const { level } = measure;
      return {
        value: level.value,
        unit: quantities[level.quantity].unit,
        detector: level.detector,
        ...(level.band === undefined ? {} : { band: { ...level.band, unit: 'Hz' } }),
        shown,
      };
    }
  }
}
