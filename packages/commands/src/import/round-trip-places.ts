import {
  aboveZeroField,
  cableRuns,
  type DesignedPoint,
  type Field,
  fieldOf,
  levelField,
  motions,
  notBelowZeroField,
  quantityField,
  type Shelf,
  textField,
  wiringSheet,
} from '@soundpost/core';
import type { Edit } from '@soundpost/files';

/** What a cell of an exported table is in the plant file. */
export type CellPlace =
  | {
      readonly is: 'stated';
      readonly path: Edit['path'];
      readonly field: Field<unknown>;
      readonly quantity: boolean;
      readonly ending?: string;
      /** What else the change reaches. */
      readonly reaches?: string;
    }
  | { readonly is: 'part'; readonly path: Edit['path']; readonly shelf: Shelf }
  /** Not stated anywhere: why it cannot be set here, and where it comes from. */
  | { readonly is: 'derived'; readonly words: string };

/** A table that comes back: which point a row speaks of, and where each of its columns stands in the plant file. */
export interface RoundTrip {
  readonly kind: string;
  /** Heads of the columns that say which row it is; they are not edited here. */
  readonly names: readonly string[];
  /** Name of the point from the first cell of a row. */
  pointOf(first: string): string;
  place(column: string, designed: DesignedPoint, names: readonly string[], path: Edit['path']): CellPlace;
}

type StatedPlace = Extract<CellPlace, { is: 'stated' }>;

const worked = (from: string): CellPlace => ({
  is: 'derived',
  words: `It is worked out, not stated; it follows from ${from}.`,
});
const stated = (path: Edit['path'], field: Field<unknown>): CellPlace => ({
  is: 'stated',
  path,
  field,
  quantity: false,
});
const quantity = (path: Edit['path'], field: Field<unknown>, ending?: string): StatedPlace => ({
  is: 'stated',
  path,
  field,
  quantity: true,
  ...(ending === undefined ? {} : { ending }),
});

const length = notBelowZeroField(quantityField('length', 'Cable length', { example: '85 m' }));
const time = quantityField('time', 'Delay', { example: '3 s' });
const level = levelField(motions, 'Level', { example: '1.9 mm/s rms' });

const instrumentList: RoundTrip = {
  kind: 'instrument-list',
  names: ['Tag'],
  pointOf: (first) => first,
  place: (column, _, __, path) => {
    switch (column) {
      case 'Location':
        return stated([...path, 'location'], textField('Location'));
      case 'Direction':
        return stated([...path, 'direction'], textField('Direction'));
      case 'Surface':
        return quantity(
          [...path, 'surface-temperature'],
          quantityField('temperature', 'Surface temperature', { example: '65 °C' }),
        );
      case 'Transducer':
        return { is: 'part', path: [...path, 'chain', 'transducer'], shelf: 'transducers' };
      case 'Mount':
        return { is: 'part', path: [...path, 'chain', 'mount'], shelf: 'mounts' };
      case 'Input':
        return { is: 'part', path: [...path, 'chain', 'input'], shelf: 'inputs' };
      case 'Service':
        return worked('the title of the machine');
      case 'Area':
        return worked('the hazardous area of the machine or the point');
      default:
        return worked('the transducer');
    }
  },
};

const cableSchedule: RoundTrip = {
  kind: 'cable-schedule',
  names: ['Cable'],
  pointOf: (first) => first.replace(/\/C\d+$/, ''),
  place: (column, { appraisal }, [cable = ''], path) => {
    const number = Number(/\/C(\d+)$/.exec(cable)?.[1]);
    const chain = appraisal?.prediction.chain;
    if (chain === undefined || !cableRuns(chain).some((each) => each.number === number)) {
      return { is: 'derived', words: 'The plant has no such length of cable. A table changes lengths, it makes none.' };
    }
    const onward = [...(chain.parts.onward ?? [])].sort((a, b) => a.behind - b.behind)[number - 2];
    const at = number === 1 ? [...path, 'chain'] : [...path, 'chain', 'in-line', onward!.behind];
    switch (column) {
      case 'Type':
        return { is: 'part', path: [...at, 'cable'], shelf: 'cables' };
      case 'Length':
        return quantity([...at, 'cable-length'], length);
      case 'Screen earthed at':
        return stated([...path, 'wiring', 'screen-earthed'], fieldOf(wiringSheet.screenEarthed));
      case 'Runs along':
        return stated([...path, 'wiring', 'power-cable'], fieldOf(wiringSheet.powerCable));
      case 'Apart by':
        return quantity([...path, 'wiring', 'power-distance'], fieldOf(wiringSheet.powerDistance));
      default:
        return worked('the chain of the point and the data sheet of the cable');
    }
  },
};

const alarmRegister: RoundTrip = {
  kind: 'alarm-register',
  names: ['Tag', 'Level'],
  pointOf: (first) => first,
  place: (column, { alarms }, [, row = ''], path) => {
    const own = alarms?.stated.setPoints?.find((each) => each.name === row);
    const at = [...path, 'alarm'];
    const ofOwn = own === undefined ? at : [...at, 'set-points', row];
    if (column === 'Set at' && (own !== undefined || row === 'baseline')) {
      const now = own?.level ?? alarms?.stated.baseline;
      const band = now?.known === true ? now.value.band : undefined;
      const ending = band === undefined ? undefined : ` ${band.low}-${band.high} Hz`;
      return quantity(own === undefined ? [...at, 'baseline'] : [...ofOwn, 'level'], level, ending);
    }
    if (column === 'Delay' && (own !== undefined || row === 'alert')) {
      const delay = quantity(
        [...ofOwn, 'delay'],
        aboveZeroField(time, 'A delay of nothing is no delay; say how long.'),
      );
      return own === undefined && alarms?.stated.tripDelay === undefined
        ? { ...delay, reaches: 'The trip takes it too, for no delay of its own is stated.' }
        : delay;
    }
    if (column === 'Delay' && row === 'trip') return quantity([...at, 'trip-delay'], time);
    if (column === 'Because' && own !== undefined) return stated([...ofOwn, 'because'], textField('Why'));
    return worked('the limits, the baseline and the chain of the point');
  },
};

/** Every table that is exported to be edited and handed back in. */
export const roundTrips: readonly RoundTrip[] = [instrumentList, cableSchedule, alarmRegister];
