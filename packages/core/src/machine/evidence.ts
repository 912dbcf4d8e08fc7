import { bearingWebCalculator } from '../source/bearing-web-calculator.ts';
import { beltPractice } from '../source/belt-practice.ts';
import { curtinBearingData } from '../source/curtin-bearing-data.ts';
import { cwruBearingData } from '../source/cwru-bearing-data.ts';
import { gearFrequencies } from '../source/gear-frequencies.ts';
import { gearTrainingNotes } from '../source/gear-training-notes.ts';
import { gearboxSignalTutorial } from '../source/gearbox-signal-tutorial.ts';
import { inductionMotorPractice } from '../source/induction-motor-practice.ts';
import { mfptBearingData } from '../source/mfpt-bearing-data.ts';
import { numericalPackageNotes } from '../source/numerical-package-notes.ts';
import { phm2012Bearing } from '../source/phm-2012-bearing.ts';
import { type Clause, clause } from '../source/source.ts';
import { type Printed, printed } from '../working/printed.ts';
import { beltPass } from './workings/belt.ts';
import { gearMesh } from './workings/gear-mesh.ts';
import { inductionMotorFrequencies } from './workings/induction-motor.ts';
import { rollingBearingFrequencies } from './workings/rolling-bearing-frequencies.ts';

type Row = Readonly<Record<string, string>>;

/** Elements, element diameter, pitch diameter, contact angle. */
function bearing(source: Clause, [n, d, D, φ]: readonly string[], speed: string, row: Row, looser?: Printed['looser']) {
  return printed({
    working: rollingBearingFrequencies,
    given: {
      elements: n!,
      'element-diameter': d!,
      'pitch-diameter': D!,
      'contact-angle': φ!,
      'shaft-speed': speed,
    },
    printed: row,
    source,
    ...(looser === undefined ? {} : { looser }),
  });
}

const roundedDimensions = { relative: 1e-4, because: 'the source prints its dimensions to four digits' };
const driveEnd = ['9', '0.3126 in', '1.537 in', '0 deg'];
const fanEnd = ['8', '0.2656 in', '1.122 in', '0 deg'];
const angular = ['8', '2 mm', '12 mm', '15 deg'];

const bearings = [
  bearing(
    clause(cwruBearingData, 'drive end, multiples of shaft speed; its rolling element is twice the spin'),
    driveEnd,
    '1 Hz',
    {
      'inner-ring': '5.4152 Hz',
      'outer-ring': '3.5848 Hz',
      cage: '0.39828 Hz',
      'element-spin-twice': '4.7135 Hz',
    },
    roundedDimensions,
  ),
  bearing(clause(cwruBearingData, 'drive end at 1797 r/min'), driveEnd, '1797 r/min', {
    'outer-ring': '107.4 Hz',
    'inner-ring': '162.2 Hz',
    'element-spin': '70.6 Hz',
    'element-spin-twice': '141.2 Hz',
    cage: '11.9 Hz',
  }),
  bearing(
    clause(cwruBearingData, 'fan end, multiples of shaft speed'),
    fanEnd,
    '1 Hz',
    { 'inner-ring': '4.9469 Hz', 'outer-ring': '3.0530 Hz', cage: '0.3817 Hz' },
    { relative: 2e-4, because: 'the source prints 3.0530 and 3.0531, and its dimensions to four digits' },
  ),
  bearing(
    clause(cwruBearingData, 'fan end, rolling element', 'from memory'),
    fanEnd,
    '1 Hz',
    { 'element-spin-twice': '3.9874 Hz' },
    roundedDimensions,
  ),
  bearing(clause(curtinBearingData, 'read-me'), ['9', '7.9375 mm', '38.50 mm', '0 deg'], '1 Hz', {
    cage: '0.3969 Hz',
    'outer-ring': '3.572 Hz',
    'inner-ring': '5.428 Hz',
    'element-spin': '2.32 Hz',
  }),
  bearing(
    clause(mfptBearingData),
    ['8', '0.235 in', '1.245 in', '0 deg'],
    '25 Hz',
    { 'outer-ring': '81.125 Hz', 'inner-ring': '118.875 Hz' },
    { relative: 1e-5, because: 'the source prints its dimensions to four digits, and 81.1245 rounded up' },
  ),
  bearing(clause(numericalPackageNotes, 'angular contact, 8 balls; outputs', 'computed here'), angular, '25 Hz', {
    'outer-ring': '83.9012 Hz',
    'inner-ring': '116.0988 Hz',
    'element-spin': '73.0562 Hz',
    cage: '10.4877 Hz',
  }),
  bearing(clause(gearboxSignalTutorial), angular, '22.5 Hz', { 'inner-ring': '104.4889 Hz' }),
  bearing(clause(bearingWebCalculator), ['8', '10 mm', '50 mm', '0 deg'], '1800 r/min', {
    cage: '12 Hz',
    'outer-ring': '96 Hz',
    'inner-ring': '144 Hz',
    'element-spin': '72 Hz',
  }),
  bearing(
    clause(phm2012Bearing, 'geometry of A.1; outputs', 'computed here'),
    ['13', '3.5 mm', '25.6 mm', '0 deg'],
    '1800 r/min',
    { 'outer-ring': '168.340 Hz', 'inner-ring': '221.660 Hz', 'element-spin': '107.664 Hz', cage: '12.949 Hz' },
  ),
];

function gears(source: Clause, z1: string, z2: string, speed: string, row: Row): Printed {
  const given = { 'pinion-teeth': z1, 'wheel-teeth': z2, 'pinion-speed': speed };
  return printed({ working: gearMesh, given, printed: row, source });
}

const gearRows = [
  gears(clause(numericalPackageNotes, 'pinion 13 teeth at 22.5 Hz, wheel 35', 'from memory'), '13', '35', '22.5 Hz', {
    mesh: '292.5 Hz',
    'wheel-speed': '8.357 Hz',
  }),
  gears(clause(numericalPackageNotes, 'the same pair', 'computed here'), '13', '35', '22.5 Hz', {
    'wheel-speed': '8.35714 Hz',
    phases: '1',
    'hunting-tooth': '0.642857 Hz',
  }),
  gears(clause(gearTrainingNotes), '24', '84', '2000 r/min', { 'wheel-speed': '571.4 r/min' }),
  gears(clause(gearTrainingNotes, 'frequencies of the same pair', 'computed here'), '24', '84', '2000 r/min', {
    mesh: '48000 cpm',
    phases: '12',
    'assembly-phase': '4000 cpm',
    'hunting-tooth': '285.71 cpm',
  }),
  gears(clause(gearTrainingNotes, 'hunting tooth of the same pair', 'computed here'), '24', '84', '2000 r/min', {
    'hunting-tooth': '4.7619 Hz',
  }),
  gears(clause(gearFrequencies, '23/67, not 30 Hz', 'computed here'), '23', '67', '1800 r/min', {
    'hunting-tooth': '0.44776 Hz',
  }),
  gears(clause(gearFrequencies, '20/60, not 600 Hz', 'computed here'), '20', '60', '1800 r/min', {
    'hunting-tooth': '10 Hz',
  }),
  gears(clause(gearFrequencies, '18/54, not 1080 Hz', 'computed here'), '18', '54', '3600 r/min', {
    'hunting-tooth': '20 Hz',
  }),
];

const motors = [
  printed({
    working: inductionMotorFrequencies,
    given: { 'line-frequency': '60 Hz', poles: '4', speed: '1780 r/min', 'rotor-bars': '44' },
    printed: {
      'synchronous-speed': '1800 r/min',
      'slip-frequency': '0.33333 Hz',
      'pole-pass': '1.33333 Hz',
      'twice-line': '120 Hz',
      'rotor-bar-pass': '1305.333 Hz',
    },
    source: clause(inductionMotorPractice, '60 Hz, 4 poles, 1780 r/min, 44 bars', 'computed here'),
  }),
];

const belts = [
  printed({
    working: beltPass,
    given: { 'pulley-diameter': '0.22 m', 'pulley-speed': '960 r/min', 'belt-length': '3.1 m', slip: '0.5 %' },
    printed: { 'belt-pass': '3.5494 Hz' },
    source: clause(beltPractice, 'row of a public table, its other row misprinted'),
  }),
];

/** Other people's numbers for the workings of this room. */
export const machineEvidence: readonly Printed[] = [...bearings, ...gearRows, ...motors, ...belts];
