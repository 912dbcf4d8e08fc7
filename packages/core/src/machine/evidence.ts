import { bearingWebCalculator } from '../source/bearing-web-calculator.ts';
import { beltPractice } from '../source/belt-practice.ts';
import { curtinBearingData } from '../source/curtin-bearing-data.ts';
import { cwruBearingData } from '../source/cwru-bearing-data.ts';
import { gearFrequencies } from '../source/gear-frequencies.ts';
import { gearTrainingNotes } from '../source/gear-training-notes.ts';
import { gearboxSignalTutorial } from '../source/gearbox-signal-tutorial.ts';
import { helicopterGearbox } from '../source/helicopter-gearbox.ts';
import { inductionMotorPractice } from '../source/induction-motor-practice.ts';
import { mfptBearingData } from '../source/mfpt-bearing-data.ts';
import { nrelGearbox } from '../source/nrel-gearbox.ts';
import { numericalPackageNotes } from '../source/numerical-package-notes.ts';
import { phm2012Bearing } from '../source/phm-2012-bearing.ts';
import { planetaryKinematics } from '../source/planetary-kinematics.ts';
import { reciprocatingPractice } from '../source/reciprocating-practice.ts';
import { screeningRules } from '../source/screening-rules.ts';
import { type Clause, clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { type Printed, printed } from '../working/printed.ts';
import { beltPass } from './workings/belt.ts';
import { bladeVane } from './workings/blade-vane.ts';
import { gearMesh } from './workings/gear-mesh.ts';
import { inductionMotorFrequencies } from './workings/induction-motor.ts';
import { planetaryGear } from './workings/planetary-gear.ts';
import { reciprocatingOrders } from './workings/reciprocating-orders.ts';
import { rollingBearingFrequencies } from './workings/rolling-bearing-frequencies.ts';
import { toothedLoop } from './workings/toothed-loop.ts';
import { wormGear } from './workings/worm-gear.ts';

// Longer than most files: one table of printed numbers, a row a line, read against its sources as a whole.

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

function planets(
  source: Clause,
  [sun, planet, ring, count]: readonly [string, string, string, string],
  [fixed, drivenBy, speed]: readonly [string, string, string],
  row: Row,
  looser?: Printed['looser'],
) {
  const given = {
    'sun-teeth': sun,
    'planet-teeth': planet,
    'ring-teeth': ring,
    planets: count,
    fixed,
    'driven-by': drivenBy,
    'input-speed': speed,
  };
  return printed({ working: planetaryGear, given, printed: row, source, ...(looser === undefined ? {} : { looser }) });
}

const windTurbine = ['21', '39', '99', '3'] as const;

const planetaries = [
  planets(
    clause(nrelGearbox, 'planet mesh at a rotor of 22.09 r/min, from the tooth counts remembered', 'computed here'),
    windTurbine,
    ['ring', 'carrier', '22.09 r/min'],
    { mesh: '36.4485 Hz' },
  ),
  planets(
    clause(
      helicopterGearbox,
      'planet mesh and rotor behind a bevel of 19/71 at 6060 r/min; 3 planets assumed',
      'computed here',
    ),
    ['27', '35', '99', '3'],
    ['ring', 'sun', '1621.6901 r/min'],
    { mesh: '573.38 Hz', 'carrier-speed': '347.5 r/min' },
  ),
  planets(
    clause(screeningRules, 'plant 6, turbine at 8.5 r/min; re-derived by its author in a second way'),
    windTurbine,
    ['ring', 'carrier', '8.5 r/min'],
    {
      'sun-speed': '0.80952 Hz',
      mesh: '14.025 Hz',
      'planet-spin': '0.35962 Hz',
      'sun-fault': '2.0036 Hz',
      'ring-fault': '0.425 Hz',
      'planet-fault-one-flank': '0.35962 Hz',
      'planet-fault': '0.71923 Hz',
      assembly: '40',
      'tooth-window': '13',
    },
  ),
  planets(
    clause(screeningRules, 'plant 6, turbine at 15.5 r/min; re-derived by its author in a second way'),
    windTurbine,
    ['ring', 'carrier', '15.5 r/min'],
    {
      'sun-speed': '1.4762 Hz',
      mesh: '25.575 Hz',
      'planet-spin': '0.65577 Hz',
      'sun-fault': '3.6536 Hz',
      'ring-fault': '0.775 Hz',
      'planet-fault': '1.3115 Hz',
    },
  ),
  planets(
    clause(planetaryKinematics, 'f_m = z_s·z_r/(z_s + z_r)·|f_s − f_r| at a held sun, by hand', 'computed here'),
    windTurbine,
    ['sun', 'ring', '60 r/min'],
    { mesh: '17.325 Hz', 'carrier-speed': '0.825 Hz', 'sun-speed': '0 Hz' },
  ),
  planets(
    clause(planetaryKinematics, 'held carrier: the ring turns back by z_s/z_r, by hand', 'computed here'),
    windTurbine,
    ['carrier', 'sun', '99 r/min'],
    { 'ring-speed': '-21 r/min', mesh: '34.65 Hz', 'carrier-speed': '0 r/min' },
  ),
];

const wormsAndLoops = [
  printed({
    working: wormGear,
    given: { starts: '2', 'wheel-teeth': '41', 'worm-speed': '1450 r/min' },
    printed: { ratio: '20.5', mesh: '48.3333 Hz', 'wheel-speed': '70.7317 r/min', 'hunting-tooth': '0.589431 Hz' },
    source: clause(gearFrequencies, 'the same forms with 2 and 41 teeth, by hand', 'computed here'),
  }),
  printed({
    working: toothedLoop,
    given: { 'driving-teeth': '19', 'driven-teeth': '57', 'loop-teeth': '120', 'driving-speed': '300 r/min' },
    printed: {
      mesh: '95 Hz',
      'driven-speed': '100 r/min',
      'loop-pass': '0.791667 Hz',
      'hunting-tooth': '0.0416667 Hz',
    },
    source: clause(tradePractice, 'mesh = teeth times speed, by hand', 'computed here'),
  }),
];

const blades = [
  printed({
    working: bladeVane,
    given: { blades: '7', speed: '2970 r/min' },
    printed: { 'blade-pass': '346.5 Hz' },
    source: clause(tradePractice, '7 vanes at 2970 r/min', 'computed here'),
  }),
  printed({
    working: bladeVane,
    given: { blades: '12', speed: '990 r/min' },
    printed: { 'blade-pass': '198 Hz' },
    source: clause(tradePractice, '12 blades at 990 r/min', 'computed here'),
  }),
  printed({
    working: bladeVane,
    given: { blades: '17', vanes: '13', speed: '11400 r/min' },
    printed: { 'blade-pass': '3230 Hz', 'vane-pass': '2470 Hz', 'common-order': '221' },
    source: clause(screeningRules, 'plant 3, compressor wheel of 17 blades and 13 vanes'),
  }),
];

const cranks = [
  printed({
    working: reciprocatingOrders,
    given: { speed: '500 r/min', throws: '4', acting: 'double' },
    printed: { once: '8.3333 Hz', 'rod-load-reversal': '16.667 Hz' },
    source: clause(screeningRules, 'plant 5, compressor of four throws'),
  }),
  printed({
    working: reciprocatingOrders,
    given: { speed: '500 r/min', throws: '4', acting: 'double', stroke: '280 mm', 'rod-length': '700 mm' },
    printed: {
      'crosshead-impacts': '66.6667 Hz',
      pulsation: '66.6667 Hz',
      'primary-inertia': '383.818 m/s2 peak',
      'secondary-inertia': '76.764 m/s2 peak',
    },
    source: clause(reciprocatingPractice, '0.14 m · (2π · 500/60)², and a fifth of it', 'computed here'),
  }),
];

/** Other people's numbers for the workings of this room. */
export const machineEvidence: readonly Printed[] = [
  ...bearings,
  ...gearRows,
  ...motors,
  ...belts,
  ...planetaries,
  ...wormsAndLoops,
  ...blades,
  ...cranks,
];
