import {
  type Catalogue,
  installations,
  nearest,
  notBelowZeroField,
  type PlantPoint,
  partCalled,
  quantityField,
  type Showing,
  type Stated,
  shortened,
  showQuantity,
  type Writing,
} from '@soundpost/core';
import { type Pasted, pastedQuantity, saidBefore } from '@soundpost/files';
import { type SaidOf, saidOf } from '../origin.ts';
import { shelfOf } from '../part-choices.ts';
import type { PlaceView } from '../views.ts';
import type { PasteField } from './views.ts';

export type ValueField = Exclude<PasteField, 'machine' | 'point'>;

const quantities = {
  'cable-length': notBelowZeroField(quantityField('length', 'Cable length', { example: '85 m' })),
  'surface-temperature': quantityField('temperature', 'Surface temperature', { example: '65 °C' }),
} as const;

/** How the table writes numbers, and how the plant file does. */
export interface PasteWritings {
  readonly table: Writing['decimal'] | undefined;
  readonly file: Writing['decimal'];
}

export function isQuantity(field: PasteField): field is keyof typeof quantities {
  return field in quantities;
}

function isPart(field: ValueField): field is PlaceView['place'] {
  return field in shelfOf;
}

/** What a cell says of a point, in the words of its plant file. */
export function pasteValue(
  field: ValueField,
  cell: string,
  unit: string | undefined,
  catalogue: Catalogue,
  writings: PasteWritings,
): Pasted {
  if (isQuantity(field)) return pastedQuantity(cell, unit, quantities[field], writings.table, writings.file);
  const before = saidBefore(cell);
  const closed = isPart(field) || field === 'installation';
  if (before?.says === 'unknown' && closed) return { says: 'refused', words: `'${cell}' cannot be built. Name one.` };
  if (before !== undefined) return before;
  if (!closed) {
    return cell.length <= 2000
      ? { says: 'value', text: cell }
      : { says: 'refused', words: 'A text has at most 2000 characters.' };
  }
  if (!isPart(field)) return oneOf(cell, installations, 'It is online or portable');
  const found = partCalled(catalogue, shelfOf[field], cell);
  if (found.found !== undefined) return { says: 'value', text: cell };
  const names = catalogue[shelfOf[field]].map((each) => each.name);
  return oneOf(cell, names, `The catalogue has no ${field} '${shortened(cell, 40)}'`);
}

/** Capitals are the spreadsheet's; any other difference is asked about. */
function oneOf(cell: string, names: readonly string[], words: string): Pasted {
  const same = names.filter((each) => each.toLowerCase() === cell.toLowerCase());
  if (same.length === 1) return { says: 'value', text: same[0]! };
  const near = nearest(cell, names);
  return { says: 'refused', words: near === undefined ? `${words}.` : `${words}. Did you mean '${near}'?` };
}

/** What stands at the point now, as a person reads it; empty where nothing does. */
export function valueBefore(field: ValueField, point: PlantPoint | undefined, showing: Showing): string {
  if (point === undefined) return '';
  const { statement, way, chosen } = point;
  const stated = (value: Stated<string>) => (value.known ? value.value : 'unknown');
  const before: Readonly<Record<ValueField, () => string>> = {
    location: () => stated(statement.location),
    direction: () => stated(statement.direction),
    installation: () => statement.installation,
    'surface-temperature': () =>
      statement.surfaceTemperature.known
        ? showQuantity('temperature', statement.surfaceTemperature.value, showing)
        : 'unknown',
    transducer: () => chosen?.transducer.name ?? '',
    mount: () => chosen?.mount.name ?? '',
    cable: () => way?.cable.name ?? '',
    'cable-length': () =>
      way === undefined
        ? ''
        : way.cableLength.known
          ? showQuantity('length', way.cableLength.value, showing)
          : 'unknown',
    input: () => way?.input.name ?? '',
  };
  return before[field]();
}

/** Whether the file may say of a value how it is known and where from. */
export function isStated(field: ValueField): boolean {
  return isQuantity(field) || field === 'location' || field === 'direction';
}

/** What the file says of the value that stands there now. */
export function saidBeforeOf(field: ValueField, point: PlantPoint | undefined): SaidOf | undefined {
  if (point === undefined) return undefined;
  const { statement } = point;
  const values: { readonly [Of in ValueField]?: Stated<unknown> | undefined } = {
    location: statement.location,
    direction: statement.direction,
    'surface-temperature': statement.surfaceTemperature,
    'cable-length': point.statedLength,
  };
  return saidOf(values[field]);
}

/** Whether a value says what the point says already; a length in feet may be the same length. */
export function saysTheSame(field: ValueField, text: string, point: PlantPoint, file: Writing['decimal']): boolean {
  if (!isQuantity(field)) return valueBefore(field, point, {}) === text;
  const now = field === 'cable-length' ? point.way?.cableLength : point.statement.surfaceTemperature;
  if (text === 'unknown') return now !== undefined && !now.known;
  return now?.known === true && now.value === quantities[field].read(text, { decimal: file });
}
