import {
  type Level,
  type QuantityName,
  quantities,
  type Showing,
  showDecibels,
  showLevel,
  showQuantity,
} from '../quantity/index.ts';

/** A number somebody will read: with its quantity, its detector where it is an amplitude, or decibels, or plain words. */
export type Measure =
  | { readonly is: 'quantity'; readonly quantity: QuantityName; readonly value: number }
  | { readonly is: 'level'; readonly level: Level }
  | { readonly is: 'decibels'; readonly value: number }
  | { readonly is: 'words'; readonly words: string };

export function measured(quantity: QuantityName, value: number): Measure {
  return { is: 'quantity', quantity, value };
}

export function measuredLevel(level: Level): Measure {
  return { is: 'level', level };
}

export function decibels(value: number): Measure {
  return { is: 'decibels', value };
}

export function inWords(words: string): Measure {
  return { is: 'words', words };
}

export function showMeasure(measure: Measure | string, showing: Showing = {}): string {
  if (typeof measure === 'string') return measure;
  switch (measure.is) {
    case 'quantity':
      return showQuantity(measure.quantity, measure.value, showing);
    case 'level':
      return showLevel(measure.level, showing);
    case 'decibels':
      return showDecibels(measure.value);
    case 'words':
      return measure.words;
  }
}

/** The measure for scripts: SI value, unit, detector where there is one, and the text shown. */
export function measureJson(measure: Measure | string): unknown {
  const shown = showMeasure(measure);
  if (typeof measure === 'string' || measure.is === 'words') return { shown };
  if (measure.is === 'decibels') return { value: measure.value, unit: 'dB', shown };
  if (measure.is === 'quantity') return { value: measure.value, unit: quantities[measure.quantity].unit, shown };
  const { level } = measure;
  return {
    value: level.value,
    unit: quantities[level.quantity].unit,
    detector: level.detector,
    ...(level.band === undefined ? {} : { band: { ...level.band, unit: 'Hz' } }),
    shown,
  };
}
