import {
  type Answer,
  type Level,
  type Missing,
  type QuantityName,
  type Showing,
  type Stated,
  shortDetector,
  showNumber,
  spelledUnit,
  theMissing,
  usualUnit,
  valueIn,
} from '@soundpost/core';
import type { Cell } from './record.ts';

export const none: Cell = { is: 'none' };
export const blank: Cell = { is: 'blank' };

export function words(text: string | undefined): Cell {
  return text === undefined || text === '' ? none : { is: 'text', text };
}

export function unknown(missing: readonly Missing[] = []): Cell {
  return { is: 'unknown', missing };
}

/** A bare number, such as a count. */
export function count(value: number): Cell {
  return { is: 'number', value, shown: showNumber(value, 7) };
}

/** An SI value in the unit of its column. */
export function numberIn(unit: string, quantity: QuantityName, value: number, showing: Showing): Cell {
  const inUnit = valueIn(unit, quantity, value);
  return { is: 'number', value: inUnit, shown: showNumber(inUnit, showing.digits, showing.decimal) };
}

/** An SI value in the unit it is usually told in. */
export function measure(quantity: QuantityName, value: number, showing: Showing): Cell {
  const unit = usualUnit(quantity, value, showing.units, showing.digits);
  const inUnit = valueIn(unit, quantity, value);
  return {
    is: 'measure',
    value: inUnit,
    shown: showNumber(inUnit, showing.digits, showing.decimal),
    unit: spelledUnit(unit),
  };
}

/** An amplitude: its unit carries its detector. */
export function levelCell(level: Level, showing: Showing): Cell {
  const cell = measure(level.quantity, level.value, showing);
  return cell.is === 'measure' ? { ...cell, unit: `${cell.unit} ${shortDetector[level.detector]}` } : cell;
}

/** A cell from an answer: nothing where nothing was asked, the word unknown with its reasons where it is not known. */
export function answered<T>(answer: Answer<T> | undefined, cell: (value: T) => Cell): Cell {
  if (answer === undefined) return none;
  return answer.known ? cell(answer.value) : unknown(answer.missing);
}

export function statedCell<T>(entry: Stated<T> | undefined, of: string, what: string, cell: (value: T) => Cell): Cell {
  if (entry === undefined) return none;
  return entry.known ? cell(entry.value) : unknown([{ of, what }]);
}

/** A cell as plain text, for facts and for forms without types. */
export function cellText(cell: Cell): string {
  switch (cell.is) {
    case 'text':
      return cell.text;
    case 'number':
      return cell.shown;
    case 'measure':
      return cell.unit === '°' ? `${cell.shown}°` : `${cell.shown} ${cell.unit}`.trim();
    case 'unknown':
      return cell.missing.length === 0 ? 'unknown' : `unknown: ${theMissing(cell.missing)}`;
    case 'none':
      return '—';
    case 'blank':
      return '';
  }
}

/** An answer as text, with what is missing where it is not known. */
export function answerText<T>(answer: Answer<T> | undefined, show: (value: T) => string): string {
  return cellText(answered(answer, (value) => words(show(value))));
}
