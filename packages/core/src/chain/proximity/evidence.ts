import { screeningRules } from '../../source/screening-rules.ts';
import { clause } from '../../source/source.ts';
import { type Printed, printed } from '../../working/printed.ts';
import { driverCableWorking } from './driver-cable.ts';
import { gapShiftWorking } from './gap-shift.ts';
import { notchPulseWorking } from './notch-pulse.ts';
import { shaftAbsoluteWorking } from './shaft-absolute.ts';
import { thrustPositionsWorking } from './thrust-positions.ts';
import { vectorSubtraction } from './vector-subtraction.ts';

const plant = (place: string) => clause(screeningRules, `plant 3, ${place}`);

/** Thrust bearing of reference plant 3: beyond the float, position, and the voltage either way. */
const thrust: readonly (readonly [beyond: string, position: string, toward: string, away: string])[] = [
  ['0 mm', '0.175 mm', '-8.623 V', '-11.38 V'],
  ['0.25 mm', '0.425 mm', '-6.655 V', '-13.34 V'],
  ['0.4 mm', '0.575 mm', '-5.475 V', '-14.53 V'],
];

/** Printed numbers of the formulas about probes on shafts, from other hands. */
export const proximityEvidence: readonly Printed[] = [
  printed({
    working: gapShiftWorking,
    given: { clearance: '0.165 mm', 'from-top': '45 deg', 'scale-factor': '7.87 mV/um', 'gap-voltage': '-10.0 V' },
    printed: { shift: '58.3 um', 'voltage-shift': '0.459 V', centred: '-9.541 V' },
    source: plant('gap of a shaft at rest'),
  }),
  ...thrust.map(([beyond, position, toward, away]) =>
    printed({
      working: thrustPositionsWorking,
      given: { float: '0.35 mm', beyond, 'gap-voltage': '-10.0 V', 'scale-factor': '7.87 mV/um' },
      printed: { position, toward, away },
      source: plant('thrust positions'),
    }),
  ),
  printed({
    working: notchPulseWorking,
    given: {
      width: '12 mm',
      depth: '1.5 mm',
      diameter: '110 mm',
      speed: '11400 r/min',
      'scale-factor': '7.87 mV/um',
      corner: '10 kHz',
    },
    printed: { pulse: '183 us', 'rise-time': '35 us', swing: '11.8 V', 'surface-speed': '65.7 m/s' },
    source: plant('once-per-turn notch'),
  }),
  printed({
    working: vectorSubtraction,
    given: { amplitude: '31.0 um pp', phase: '112 deg', 'slow-roll': '5.1 um pp', 'slow-roll-phase': '40 deg' },
    printed: { compensated: '29.82 um pp', 'compensated-phase': '121.4 deg' },
    source: plant('slow-roll subtraction'),
  }),
  printed({
    working: driverCableWorking,
    given: {
      'output-resistance': '50 ohm',
      'capacitance-per-length': '100 pF/m',
      length: '210 m',
      current: '5 mA',
      'peak-voltage': '0.98 V peak',
    },
    printed: { capacitance: '21 nF', corner: '152 kHz', 'slew-limit': '38.7 kHz' },
    source: plant('field cable'),
  }),
  // Right angles by hand: 3 and 4 µm make 5 µm as vectors a quarter turn apart and as rms; the phase is arctan(4/3).
  printed({
    working: shaftAbsoluteWorking,
    given: {
      sum: 'vector',
      relative: '3 um pp',
      'relative-phase': '0 deg',
      casing: '4 um pp',
      'casing-phase': '90 deg',
    },
    printed: { absolute: '5.000 um pp', 'absolute-phase': '53.13 deg', most: '7 um pp' },
    source: clause(screeningRules, 'the triangle of 3, 4 and 5 by hand', 'computed here'),
  }),
  printed({
    working: shaftAbsoluteWorking,
    given: { sum: 'rms', relative: '3 um pp', casing: '4 um pp' },
    printed: { absolute: '5.000 um pp' },
    source: clause(screeningRules, 'the triangle of 3, 4 and 5 by hand', 'computed here'),
  }),
];
