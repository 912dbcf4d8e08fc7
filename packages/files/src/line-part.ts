import { notBelowZeroField, type Quantity, quantityField, type Stated } from '@soundpost/core';
import { made, type Reader, text, type WithPlace, withPlace } from './reader.ts';
import { optionally, record } from './record.ts';
import { stated } from './stated.ts';

export const nameOfPart = (meaning: string) => withPlace(text(meaning));

/** A part in the line: its name in the catalogue, what the drawings call it, and the cable that leads on from it. */
export interface InLineRead {
  readonly part: WithPlace<string>;
  readonly tag?: string;
  readonly cable?: WithPlace<string>;
  readonly cableLength?: Stated<Quantity<'length'>>;
}

const name = nameOfPart('A supply, box, barrier or isolator of the catalogue');

const alone: Reader<InLineRead> = made(name, (part) => ({ part }));

const whole: Reader<InLineRead> = made(
  record('a part in the line', {
    part: name,
    tag: optionally(text('What the drawings call it, with its channel', { example: 'ZB-201/1' })),
    cable: optionally(nameOfPart('The cable that leads on from it, of the catalogue')),
    cableLength: optionally(
      stated(notBelowZeroField(quantityField('length', 'Length of that cable as walked', { example: '40 m' }))),
    ),
  }),
  (read, placed, refuse) =>
    (read.cable === undefined) === (read.cableLength === undefined)
      ? read
      : refuse(placed, {
          read: read.cable === undefined ? 'cable-length without cable' : 'cable without cable-length',
          expected: "'cable' and 'cable-length' together; the length may be 'unknown'",
        }),
);

/** Where the name is all there is to say, it need not stand under a key. */
export const inLinePart: Reader<InLineRead> = {
  expected: `${alone.expected}, or ${whole.expected}`,
  schema: { anyOf: [alone.schema, whole.schema] },
  read: (placed, reading) => (placed.kind === 'map' ? whole : alone).read(placed, reading),
};
