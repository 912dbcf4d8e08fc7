import {
  meaningsOf,
  notStated,
  type QuantityName,
  quantities,
  type RecordedUnit,
  type Stated,
  sameDimension,
  stated,
} from '@soundpost/core';

/** What vibration recorders record, the most usual first: of the meanings of a symbol, the first that fits here. */
const recorded: readonly QuantityName[] = [
  'acceleration',
  'velocity',
  'displacement',
  'voltage',
  'current',
  'force',
  'frequency',
  'time',
  'torque',
  'angle',
  'temperature',
];

/** Coulomb or degree Celsius, farad or degree Fahrenheit: not taken for either. */
const ambiguous = /^[CF]$/;

/** Unit names that mean one unit whatever is measured. `Pounds` is not among them: force or mass. */
const named: Readonly<Record<string, string>> = {
  volt: 'V',
  volts: 'V',
  millivolt: 'mV',
  millivolts: 'mV',
  ampere: 'A',
  amperes: 'A',
  milliampere: 'mA',
  milliamperes: 'mA',
  newton: 'N',
  newtons: 'N',
  hertz: 'Hz',
  pascal: 'Pa',
  pascals: 'Pa',
  second: 's',
  seconds: 's',
  sec: 's',
};

export interface HeardUnit {
  readonly unit: Stated<RecordedUnit>;
  /** What stands there, where it could not be taken. */
  readonly heard?: string;
}

/** The unit a file writes for a channel: known where it means one thing, else unknown with what was heard. */
export function recordedUnit(text: string): HeardUnit {
  const written = text.trim();
  if (written === '' || /^(none|unknown|-+|n\/?a|null)$/i.test(written)) return { unit: notStated };
  const symbol = named[written.toLowerCase()] ?? written;
  const meanings = ambiguous.test(symbol) ? [] : meaningsOf(symbol);
  const found = recorded
    .map((quantity) => ({
      quantity,
      meaning: meanings.find(({ dimension }) => sameDimension(dimension, quantities[quantity].dimension)),
    }))
    .find(({ meaning }) => meaning !== undefined);
  const meaning = found?.meaning ?? meanings[0];
  if (meaning === undefined) return { unit: notStated, heard: `the file says '${written.slice(0, 40)}'` };
  const { factor, dimension, offset } = meaning;
  return {
    unit: stated(
      {
        written,
        factor,
        dimension,
        ...(offset === undefined ? {} : { offset }),
        ...(found?.meaning === undefined ? {} : { quantity: found.quantity }),
      },
      written,
    ),
  };
}
