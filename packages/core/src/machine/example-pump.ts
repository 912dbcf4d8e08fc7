import type { TypedTrain } from './reading.ts';

/** The raw-water pump on a variable-speed drive that tests and examples of this room share. */
export const waterPump: TypedTrain = {
  of: 'P-301',
  shafts: ['motor', 'pump'],
  elements: {
    motor: {
      kind: 'induction-motor',
      on: 'motor',
      poles: 4,
      supply: 'converter',
      'line-frequency': '50 Hz',
      'rated-slip': '14 r/min',
      'torque-law': 'quadratic',
      'rotor-bars': 40,
      carrier: '4 kHz',
    },
    coupling: { kind: 'coupling', from: 'motor', to: 'pump' },
    impeller: { kind: 'impeller', on: 'pump', vanes: 6 },
    'pump-drive-end': {
      kind: 'rolling-bearing',
      on: 'pump',
      elements: 12,
      'element-diameter': '25.4 mm',
      'pitch-diameter': '112 mm',
      'contact-angle': '40 deg',
    },
    'motor-drive-end': {
      kind: 'rolling-bearing',
      on: 'motor',
      elements: 8,
      'element-diameter': '22.2 mm',
      'pitch-diameter': '105 mm',
      'contact-angle': '0 deg',
    },
  },
  operation: { motor: 'motor', frequency: '25..50 Hz' },
};
