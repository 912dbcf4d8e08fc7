import { curveField, flagField, levelField, optional, quantityField, spanField } from '@soundpost/core';
import { listOf, named } from './collections.ts';
import { sheetsByKind } from './kinds.ts';
import { nameAt } from './placed.ts';
import { choice, count, plain, text } from './reader.ts';
import { beside, optionally, record } from './record.ts';
import { sheet } from './sheet.ts';
import { stated } from './stated.ts';

/** A small file of every sort of part, for the tests of this room; the formats of the tool are files of their own. */
export const motorFields = {
  power: quantityField('power', 'Rated power', { example: '160 kW' }),
  slip: optional(quantityField('fraction', 'Slip at rated load', { example: '0.9 %' })),
} as const;

export const sensorKinds = [
  {
    kind: 'moving-coil',
    dataSheet: {
      sensitivity: quantityField('voltage per velocity', 'Sensitivity', { example: '20 mV/(mm/s)' }),
      noise: optional(curveField('velocity density', 'Noise')),
    },
  },
  {
    kind: 'accelerometer',
    dataSheet: {
      mountedResonance: quantityField('frequency', 'Mounted resonance', { example: '27 kHz' }),
      isolated: flagField('Whether its case is isolated'),
    },
  },
] as const;

const machine = record('a machine', {
  title: text('What it is called'),
  duty: choice(['running', 'standby'], 'How it is used'),
  runningSpeed: stated(quantityField('shaft speed', 'Running speed', { example: '1486 r/min' })),
  speedRange: optionally(plain(spanField('shaft speed', 'Speed range', { example: '750..1500 r/min' }))),
  limit: optionally(stated(levelField(['velocity'], 'Vibration limit'))),
  vanes: optionally(count('Vanes of the impeller', { example: '6' })),
  notes: optionally(listOf(text('A note'), 'notes', { most: 3 })),
  motor: beside(sheet(motorFields, (map) => `motor of ${nameAt(map)}`, 'a motor')),
});

export const plant = record('a plant file', {
  machines: named(machine, 'tag', 'machines by tag'),
  sensors: optionally(
    named(
      sheetsByKind('a sensor', sensorKinds, (map) => `sensor ${nameAt(map)}`, { price: optionally(text('Price')) }),
      'name',
      'sensors by name',
    ),
  ),
});
