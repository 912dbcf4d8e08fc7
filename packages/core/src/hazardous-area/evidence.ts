import { iec60079x11 } from '../source/iec-60079-11.ts';
import { iec60079x25 } from '../source/iec-60079-25.ts';
import { screeningRules } from '../source/screening-rules.ts';
import { clause } from '../source/source.ts';
import { type Printed, printed } from '../working/printed.ts';
import { entityComparisonWorking } from './workings/entity-comparison.ts';
import { resistiveBarrierWorking } from './workings/resistive-barrier.ts';

const accelerometer = { ui: '30 V', ii: '150 mA', pi: '0.85 W', ci: '12 nF', li: '60 uH' } as const;
const velocitySensor = { ui: '30 V', ii: '120 mA', pi: '0.8 W', ci: '3 nF', li: '20 uH' } as const;
const barrier = { uo: '28 V', io: '93 mA', po: '0.651 W', co: '83 nF', lo: '4.2 mH' } as const;
const isolator = { uo: '26.6 V', io: '94 mA', po: '0.625 W', co: '94 nF', lo: '4 mH' } as const;
const loopIsolator = { uo: '26 V', io: '92 mA', po: '0.598 W', co: '99 nF', lo: '4.1 mH' } as const;
const declared = { 'cable-capacitance': '160 pF/m', 'cable-inductance': '0.65 uH/m' } as const;

/** The six loops of the hydrogen compressor, each with its longest cable and the totals its author prints. */
const cases = [
  [{ ...barrier, ...accelerometer, ...declared }, ['37.6 nF', '41.5 nF', '0.164 mH', '2.1 mH', '184.375 m']],
  [{ ...barrier, ...accelerometer }, ['44.0 nF', '41.5 nF', '0.22 mH', '2.1 mH', '147.5 m']],
  [{ ...isolator, ...accelerometer, ...declared }, ['37.6 nF', '47.0 nF', '0.164 mH', '2.0 mH', '218.75 m']],
  [{ ...isolator, ...accelerometer }, ['44.0 nF', '47.0 nF', '0.22 mH', '2.0 mH', '175.0 m']],
  [{ ...loopIsolator, ...velocitySensor, ...declared }, ['28.6 nF', '99 nF', '0.124 mH', '4.1 mH', '600.0 m']],
  [{ ...loopIsolator, ...velocitySensor }, ['35.0 nF', '99 nF', '0.18 mH', '4.1 mH', '480.0 m']],
] as const;

export const areaEvidence: readonly Printed[] = [
  printed({
    working: resistiveBarrierWorking,
    given: { uo: '28 V', resistance: '300 ohm' },
    printed: { io: '93.33 mA', po: '0.6533 W' },
    source: clause(iec60079x11, 'linear limitation, worked case', 'computed here'),
  }),
  printed({
    working: entityComparisonWorking,
    given: {
      ...barrier,
      ...accelerometer,
      co: '0.125 uF',
      ci: '5 nF',
      li: '0 uH',
      group: 'IIC',
      'cable-length': '100 m',
    },
    printed: { 'maximum-length': '600 m' },
    source: clause(iec60079x25, 'cable values where none are declared, worked case', 'computed here'),
  }),
  ...cases.map(([given, [capacitance, allowedCapacitance, inductance, allowedInductance, length]]) =>
    printed({
      working: entityComparisonWorking,
      given: { ...given, group: 'IIC', 'cable-length': '160 m' },
      printed: {
        'total-capacitance': capacitance,
        'allowed-capacitance': allowedCapacitance,
        'total-inductance': inductance,
        'allowed-inductance': allowedInductance,
        'maximum-length': length,
      },
      source: clause(screeningRules, 'plant 5, comparison of the loops'),
    }),
  ),
];
