import { api670 } from '../../source/api-670.ts';
import { chargeAmplifier } from '../../source/charge-amplifier.ts';
import { iso20816x1 } from '../../source/iso-20816-1.ts';
import { leakTesting } from '../../source/leak-testing.ts';
import { screeningRules } from '../../source/screening-rules.ts';
import { seismometryNotes } from '../../source/seismometry-notes.ts';
import { clause } from '../../source/source.ts';
import { type Printed, printed } from '../../working/printed.ts';
import { chargeConverter } from './charge-converter.ts';
import { leakRate } from './leak-rate.ts';
import { movingCoilResponse } from './moving-coil-response.ts';
import { proximityGap } from './proximity-gap.ts';
import { sMax } from './s-max.ts';

type Row = Readonly<Record<string, string>>;

const amplifier = clause(chargeAmplifier, 'worked values', 'computed here');
const converter = (feedback: readonly [string, string], results: Row, more: Row = {}, source = amplifier) =>
  printed({
    working: chargeConverter,
    given: {
      sensitivity: '1 pC/(m/s2)',
      'feedback-capacitance': feedback[0],
      'feedback-resistance': feedback[1],
      ...more,
    },
    printed: results,
    source,
  });

const charges: readonly Printed[] = [
  converter(['1 nF', '10 Gohm'], { corner: '0.0159155 Hz', 'voltage-sensitivity': '1.000 mV/(m/s2)' }),
  converter(['1 nF', '1 Gohm'], { corner: '0.159155 Hz' }),
  converter(['100 pF', '10 Gohm'], { corner: '0.159155 Hz' }),
  converter(['1 nF', '1 Gohm'], { 'noise-gain': '11' }, { 'source-capacitance': '10 nF' }),
  converter(
    ['250 pF', '1 Gohm'],
    { corner: '0.637 Hz', 'voltage-sensitivity': '100.0 mV/g' },
    { sensitivity: '25 pC/g' },
    clause(screeningRules, 'catalogue of the reference plants, charge accelerometer'),
  ),
];

/** Ratio f/f₀ above which the error stays within 5 % and within 10 %, by damping: the table of check values. */
const coilTable: readonly (readonly [damping: string, fivePercent: string, tenPercent: string, side: 1 | -1])[] = [
  ['0.5', '3.105', '2.115', 1],
  ['0.6', '1.185', '1.091', -1],
  ['0.65', '1.389', '1.228', -1],
  ['0.7', '1.692', '1.408', -1],
  ['0.707', '1.744', '1.437', -1],
];

const coil = (damping: string, ratio: string, results: Row) =>
  printed({
    working: movingCoilResponse,
    given: { suspension: '1 Hz', damping, frequency: `${ratio} Hz` },
    printed: results,
    source: clause(seismometryNotes, 'error table by damping', 'computed here'),
  });

const coils: readonly Printed[] = [
  ...coilTable.flatMap(([damping, five, ten, side]) => [
    coil(damping, five, { magnitude: (1 + side * 0.05).toFixed(3) }),
    coil(damping, ten, { magnitude: (1 + side * 0.1).toFixed(3) }),
  ]),
  coil('0.7', '0.990', { magnitude: '0.707' }),
  coil('0.7071', '1.000', { magnitude: '0.707', phase: '90.0 deg' }),
  coil('0.5', '1', { magnitude: '1.000', phase: '90.0 deg' }),
  printed({
    working: movingCoilResponse,
    given: { suspension: '10 Hz', damping: '0.68', frequency: '11 Hz' },
    printed: { magnitude: '0.801' },
    source: clause(screeningRules, 'plant 2, moving coil at the girth mesh: −19.9 %'),
  }),
];

const gap = (given: Row, results: Row, source = clause(api670, '200 mV/mil', 'computed here')) =>
  printed({ working: proximityGap, given, printed: results, source });

const gaps: readonly Printed[] = [
  gap({ 'scale-factor': '200 mV/mil', gap: '50 mil' }, { voltage: '-10.0 V' }),
  gap({ 'scale-factor': '200 mV/mil', gap: '80 mil' }, { voltage: '-16.0 V' }),
  gap({ 'scale-factor': '7.874016 mV/um', voltage: '-10 V' }, { gap: '50.0000 mil' }),
  gap(
    { 'scale-factor': '7.87 mV/um', voltage: '-10 V' },
    { gap: '1.2706 mm' },
    clause(screeningRules, 'plant 4, gap at −10 V'),
  ),
  gap(
    { 'scale-factor': '0.787 mV/um', gap: '6.95 mm' },
    { voltage: '-5.47 V' },
    clause(screeningRules, 'plant 2, gap at mid range'),
  ),
];

/** Samples of a closed curve with both its ends among them: 64 over a turn, radius 1 µm. */
const turns = Array.from({ length: 64 }, (_, index) => (2 * Math.PI * index) / 64);
const samples = (of: (angle: number) => number) => `${turns.map((angle) => of(angle).toFixed(12)).join(', ')} um`;

const orbits: readonly Printed[] = [
  printed({
    working: sMax,
    given: { x: samples(Math.cos), y: samples(Math.sin) },
    printed: { 'method-a': '2.828 um pp', 'method-b': '2.000 um pp', 'method-c': '2.000 um pp' },
    source: clause(iso20816x1, 'S_max of a circle', 'computed here'),
  }),
  printed({
    working: sMax,
    given: { x: samples((t) => Math.cos(t) / Math.SQRT2), y: samples((t) => Math.cos(t) / Math.SQRT2) },
    printed: { 'method-a': '2.000 um pp', 'method-b': '1.414 um pp', 'method-c': '2.000 um pp' },
    source: clause(iso20816x1, 'S_max of a line at 45°', 'computed here'),
  }),
];

const leak = (given: Row, result: string) =>
  printed({
    working: leakRate,
    given,
    printed: { result },
    source: clause(leakTesting, 'conversions', 'computed here'),
  });

const leaks: readonly Printed[] = [
  leak({ from: '1 Pa m3/s', to: 'mbar l/s' }, '10.0000 mbar l/s'),
  leak({ from: '1 mbar l/s', to: 'atm cm3/s std' }, '0.98692 atm cm3/s std'),
  leak({ from: '1 atm cm3/s', to: 'mbar l/s' }, '1.01325 mbar l/s'),
  leak({ from: '1 atm mm3/s', to: 'mbar l/s' }, '0.0010 mbar l/s'),
  leak({ from: '1 mbar l/s', gas: 'air to helium', flow: 'molecular', to: 'mbar l/s' }, '2.69 mbar l/s'),
];

/** Printed numbers of the formulas of the transducer families, from other hands. */
export const transducerEvidence: readonly Printed[] = [...charges, ...coils, ...gaps, ...orbits, ...leaks];
