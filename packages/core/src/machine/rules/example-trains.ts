import type { Typed, TypedElement, TypedTrain } from '../reading.ts';

type Fields = Readonly<Record<string, Typed>>;

/** A motor on the mains with one thing changed, for the examples of rules. */
export function motorTrain(changed: Fields, plates: Readonly<Record<string, Typed>> = {}): TypedTrain {
  return {
    of: 'P-1',
    shafts: ['motor'],
    elements: {
      motor: {
        kind: 'induction-motor',
        on: 'motor',
        poles: 4,
        supply: 'converter',
        'line-frequency': '50 Hz',
        'rated-speed': '1486 r/min',
        'torque-law': 'quadratic',
        ...changed,
      },
    },
    operation: { motor: 'motor', frequency: '25..50 Hz' },
    plates,
  };
}

/** One element on a shaft of 1486 r/min. */
export function oneElement(element: TypedElement): TypedTrain {
  return {
    of: 'F-1',
    shafts: ['fan'],
    elements: { 'drive-end': element },
    operation: { shaft: 'fan', speed: '1486 r/min' },
  };
}

/** A deep-groove bearing with some of its drawing changed. */
export function bearingTrain(changed: Fields): TypedTrain {
  return oneElement({
    kind: 'rolling-bearing',
    on: 'fan',
    elements: 9,
    'element-diameter': '7.94 mm',
    'pitch-diameter': '39.04 mm',
    'contact-angle': '0 deg',
    ...changed,
  });
}

/** Two shafts and what joins them. */
export function linkedTrain(link: TypedElement, plates: Readonly<Record<string, Typed>> = {}): TypedTrain {
  return {
    of: 'G-1',
    shafts: ['motor', 'machine'],
    elements: { link: { from: 'motor', to: 'machine', ...link } },
    operation: { shaft: 'motor', speed: '1486 r/min' },
    plates,
  };
}

export function gearTrain(changed: Fields, plates: Readonly<Record<string, Typed>> = {}): TypedTrain {
  return linkedTrain({ kind: 'gear-pair', 'driving-teeth': 25, 'driven-teeth': 84, ...changed }, plates);
}

export function beltTrain(changed: Fields): TypedTrain {
  return linkedTrain({
    kind: 'belt-drive',
    'driving-diameter': '180 mm',
    'driven-diameter': '355 mm',
    'belt-length': '2500 mm',
    slip: '0.5..1 %',
    ...changed,
  });
}

/** A planetary stage with the ring held, driven at the carrier. */
export function planetaryTrain(changed: Fields): TypedTrain {
  return {
    of: 'G-2',
    shafts: ['rotor', 'sun'],
    elements: {
      stage: {
        kind: 'planetary-stage',
        sun: 'sun',
        carrier: 'rotor',
        ring: 'fixed',
        'sun-teeth': 21,
        'planet-teeth': 39,
        'ring-teeth': 99,
        planets: 3,
        ...changed,
      },
    },
    operation: { shaft: 'rotor', speed: '8.5..15.5 r/min' },
  };
}

export function wormTrain(changed: Fields): TypedTrain {
  return {
    of: 'G-3',
    shafts: ['motor', 'table'],
    elements: { pair: { kind: 'worm-pair', worm: 'motor', wheel: 'table', starts: 2, 'wheel-teeth': 41, ...changed } },
    operation: { shaft: 'motor', speed: '1450 r/min' },
  };
}
