import { alarmRules } from './alarm/rules/rules.ts';
import { chainRules } from './chain/rules/rules.ts';
import { demandRules } from './demand/rules/rules.ts';
import type { Evidence, EvidenceSort } from './evidence-list.ts';
import { areaRules } from './hazardous-area/rules/rules.ts';
import { machineRules } from './machine/rules/rules.ts';
import { windowNames } from './signal/index.ts';
import { distributions } from './uncertainty/distribution/distributions.ts';
import { wiringRules } from './wiring/index.ts';

// Longer than most files: one list, read against the lists of kinds and rules as a whole.

/**
 * Who holds which kind against what. A claim names the test and words that stand there; a test looks whether they do.
 * That an unknown field never makes a pass is tried on every kind of a chain, and is not counted here.
 */
function claim(sort: EvidenceSort, source: string, test: string, words: string, ...subjects: readonly string[]) {
  return subjects.map((subject): Evidence => ({ subject, sort, source, test, words }));
}

const circuit = 'circuit simulator ngspice';
const library = 'scipy, a numerical library';
/** Answers of the author of a reference plant, who used other code and a second derivation. */
const author = (plant: string, words: string, ...subjects: readonly string[]) =>
  claim(
    'independent',
    `author of the reference plant ${plant}`,
    `evidence/${plant}/${plant}.test.ts`,
    words,
    ...subjects,
  );
const pump = (words: string, ...subjects: readonly string[]) => author('raw-water-pump', words, ...subjects);
const turbo = (words: string, ...subjects: readonly string[]) => author('turbo-compressor', words, ...subjects);
const hydrogen = (words: string, ...subjects: readonly string[]) => author('hydrogen-compressor', words, ...subjects);
const turbine = (words: string, ...subjects: readonly string[]) => author('wind-turbine', words, ...subjects);
const screen = (words: string, ...subjects: readonly string[]) => author('vibrating-screen', words, ...subjects);

const chainTest = 'evidence/chain.test.ts';
const transducerTest = 'packages/core/src/chain/transducer/transducers.test.ts';
const barrierTest = 'evidence/barriers/barriers.test.ts';
const inCircuit = 'is that of the circuit (ngspice)';

const chain: readonly Evidence[] = [
  ...claim('independent', circuit, chainTest, inCircuit, 'transducer iepe-accelerometer', 'transducer moving-coil'),
  ...claim('independent', circuit, chainTest, inCircuit, 'input constant-current-input', 'input direct-voltage-input'),
  ...claim('independent', circuit, chainTest, 'stands for the distributed line', 'cable signal-cable'),
  ...claim('independent', circuit, chainTest, 'clips where the bias window ends', 'supply series-resistance'),
  ...claim('independent', library, chainTest, 'scipy.signal.freqs', 'transducer piezo-velocity'),
  ...claim('independent', library, chainTest, 'scipy.signal.freqs', 'transducer loop-sensor'),
  ...claim('independent', library, chainTest, 'scipy.signal.freqs', 'transducer proximity-system'),
  ...claim('independent', circuit, transducerTest, 'converter beside ngspice', 'transducer charge-accelerometer'),
  ...turbine('NACELLE.noise_DCA2', 'transducer capacitive-dc'),
  ...turbine('LFV-75@', 'transducer low-frequency-velocity'),
  ...turbo('LVD-25@', 'transducer lvdt'),
  ...turbo('SRD-20@', 'transducer shaft-rider'),
  ...claim(
    'law',
    'a device with the one output alone',
    transducerTest,
    'that of a device with the one alone',
    'transducer dual-output',
  ),
  ...pump('mount.stud.f_mounted', 'mount stud'),
  ...pump('mount.epoxy-pad.f_mounted', 'mount adhesive-pad'),
  ...pump('mount.quick-lock.f_mounted', 'mount quick-lock'),
  ...pump('mount.magnet-flat.f_mounted', 'mount flat-magnet'),
  ...pump('mount.magnet-2pole.f_mounted', 'mount two-pole-magnet'),
  ...pump('mount.hand-probe.f_mounted', 'mount hand-probe'),
  ...pump('mount.isolating-stud.f_mounted', 'mount isolating-stud'),
  ...pump('loop.R_max', 'supply loop-supply'),
  ...pump('loop.counts16', 'input current-card'),
  ...hydrogen('chain.slew_50g_ZB', 'supply shunt-diode-barrier'),
  ...hydrogen('chain.slew_50g_GI', 'supply galvanic-isolator-iepe'),
  ...claim(
    'independent',
    circuit,
    barrierTest,
    'through %s',
    'supply shunt-diode-barrier',
    'supply galvanic-isolator-iepe',
  ),
  ...claim('independent', circuit, barrierTest, 'a loop on an isolator', 'supply galvanic-isolator-loop'),
  ...claim(
    'law',
    'two lengths are one of their sum',
    'packages/core/src/chain/supply/barriers.test.ts',
    'a junction box changes nothing',
    'supply junction-box',
  ),
];

const arrangements = claim(
  'independent',
  'author of the reference plant turbo-compressor',
  'packages/core/src/chain/proximity/proximity.test.ts',
  'the arrangements give the numbers of the author',
  ...['xy-pair', 'thrust-pair', 'once-per-turn', 'slow-roll'].map((kind) => `probe arrangement ${kind}`),
);

const inSpace = claim(
  'printed',
  'triangle of 3, 4 and 5 by hand',
  'packages/core/src/chain/proximity/proximity.test.ts',
  'the shaft in space by the triangle of 3, 4 and 5',
  'probe arrangement casing-beside',
);

const machineFolder = 'packages/core/src/machine';
const widened = `${machineFolder}/widened-kinds.test.ts`;
const machine: readonly Evidence[] = [
  ...pump('freq.50Hz.RBPF', 'machine element induction-motor'),
  ...pump('freq.50Hz.VPF', 'machine element impeller'),
  ...pump('freq.50Hz.fr', 'machine element coupling'),
  ...hydrogen('freq.coincidence_12x_2line', 'machine element synchronous-motor'),
  ...turbo('freq.whirl_low', 'machine element fluid-film-bearing'),
  ...turbo('freq.critical', 'machine element critical-speed'),
  ...screen('motion.acc_g_pk', 'machine element screen-exciter'),
  ...turbine('acq.order.hss_turns', 'machine element phase-reference'),
  ...claim(
    'independent',
    'rigid bodies that do not slip, passages counted',
    `${machineFolder}/laws.test.ts`,
    '60 bearings of rigid bodies',
    'machine element rolling-bearing',
  ),
  ...claim(
    'independent',
    'ratios along the path in another language',
    `${machineFolder}/speeds.test.ts`,
    '40 gear networks',
    'machine element gear-pair',
  ),
  ...claim(
    'independent',
    'rims that roll, passages counted',
    `${machineFolder}/planetary.test.ts`,
    '60 stages of rims that roll',
    'machine element planetary-stage',
  ),
  ...claim('printed', 'belt tables', `${machineFolder}/evidence.ts`, 'beltPass', 'machine element belt-drive'),
  ...claim(
    'law',
    'the loop repeats in whole turns of both wheels',
    widened,
    'both wheels of a chain or timing belt turn the same way',
    'machine element timing-belt',
    'machine element chain-drive',
  ),
  ...claim(
    'law',
    'a worm of z starts is a wheel of z teeth',
    widened,
    'a worm of z starts',
    'machine element worm-pair',
  ),
  ...claim(
    'law',
    'male and female pockets pass as often',
    widened,
    'pass as many pockets as flutes',
    'machine element screw-rotors',
  ),
  ...claim(
    'printed',
    'author of the reference kiln',
    widened,
    'tyre on roller of the reference kiln',
    'machine element friction-pair',
  ),
  ...claim(
    'independent',
    'exact slider crank, 20 cranks',
    widened,
    'inertia of a piston against the exact slider crank',
    'machine element reciprocating-machine',
  ),
  ...claim(
    'independent',
    'node diameters counted in a Fourier transform',
    widened,
    'node diameters between runner and guide vanes',
    'machine element hydraulic-turbine',
  ),
  ...claim(
    'law',
    'half-power width is frequency over quality',
    `${machineFolder}/speed-map.test.ts`,
    'the half-power width of a mode',
    'machine element structural-mode',
  ),
];

const demand: readonly Evidence[] = [
  ...pump('noise.velocity_2_1000', 'observable overall'),
  ...pump('noise.accel_2k_10k', 'observable burst'),
  ...turbine('chain.ACC-500_line_noise', 'observable line'),
  ...turbo('JOURNAL.verdict', 'observable position'),
];

const zonesTest = 'packages/core/src/demand/zones/zones.test.ts';
const editions = ['iso-20816-3-2022', 'iso-10816-3-2009'];
const groupTables = editions.flatMap((edition) =>
  ['group-1', 'group-2'].flatMap((group) =>
    ['rigid', 'flexible'].flatMap((support) =>
      ['velocity', 'displacement'].map((motion) => `zone table ${edition}-${group}-${support}-${motion}`),
    ),
  ),
);
const pumps = ['i-up-to-200-kw', 'i-above-200-kw', 'ii-up-to-200-kw', 'ii-above-200-kw'];
const compressorParts = ['foundation', 'frame-top', 'cylinder-lateral', 'cylinder-rod', 'dampers', 'piping'];
const zones: readonly Evidence[] = [
  ...claim(
    'printed',
    'check values',
    'packages/core/src/demand/zones/tables/iso-10816-7-2009.test.ts',
    'displacement of slow pumps',
    'zone table iso-10816-7-2009-category-i-slow',
    'zone table iso-10816-7-2009-category-ii-slow',
  ),
  ...claim('printed', 'check values', zonesTest, 'velocity over displacement is 12.4 to 12.6 Hz', ...groupTables),
  ...claim(
    'printed',
    'check values and author of the reference plant turbo-compressor',
    zonesTest,
    'the table of the curve is the formula',
    'zone table iso-20816-3-2022-shaft',
    'zone table iso-7919-3-shaft',
  ),
  ...claim(
    'printed',
    'check values, largest alarm and trip of the edition',
    zonesTest,
    '1.25 times the pump boundaries',
    ...pumps.map((each) => `zone table iso-10816-7-2009-category-${each}`),
  ),
  ...claim(
    'law',
    'boundaries rise by a half from zone to zone',
    zonesTest,
    'the compressor boundaries rise by a half',
    ...compressorParts.map((each) => `zone table iso-20816-8-2018-${each}`),
  ),
  ...claim(
    'law',
    'the classes are steps out of one series of numbers',
    zonesTest,
    'the classes of 1995 are three steps',
    ...['i', 'ii', 'iii', 'iv'].map((each) => `zone table iso-10816-1-1995-class-${each}`),
  ),
];

const acquisition: readonly Evidence[] = [
  ...pump('acq.spectrum', 'spectrum set velocity-spectrum'),
  ...pump('acq.low', 'spectrum set low-range'),
  ...pump('acq.env', 'spectrum set envelope-spectrum'),
  ...turbo('acq.steady', 'spectrum set steady-shaft'),
  ...turbo('acq.sync', 'spectrum set synchronous'),
  ...turbine('acq.fixed', 'spectrum set planetary-mesh'),
  ...turbine('acq.order', 'spectrum set planetary-turns'),
  ...screen('acq.stroke', 'spectrum set motion-path'),
  ...screen("set('low-modes').from", 'spectrum set low-modes'),
  ...hydrogen('acq.deg_per_sample', 'spectrum set crank-waveform'),
  ...author('kiln-support-roller', 'acq.mesh', 'spectrum set mesh-spectrum'),
];

const alarm = pump('alarm.alert', 'alarm policy quarter-above-baseline');

const windows = claim(
  'independent',
  library,
  'packages/core/src/signal/windows/windows.test.ts',
  'for (const name of windowNames)',
  ...windowNames.map((name) => `window ${name}`),
);

const uncertainty = claim(
  'independent',
  library,
  'packages/core/src/uncertainty/distribution/distributions.test.ts',
  'test.each(distributions)',
  ...distributions.map(({ kind }) => `distribution ${kind}`),
);

export const evidenceOfKinds: readonly Evidence[] = [
  ...chain,
  ...arrangements,
  ...inSpace,
  ...machine,
  ...demand,
  ...zones,
  ...acquisition,
  ...alarm,
  ...windows,
  ...uncertainty,
];

const pair = 'a case that passes and one that does not';
const cases = (test: string, words: (rule: string) => string, rules: readonly string[]) =>
  rules.flatMap((rule) => claim('cases', pair, test, words(rule), `rule ${rule}`));
const row = (rule: string) => `'${rule}': {`;

/** Rules whose cases stand in the rule itself are tried by a test that runs over their list. */
export const evidenceOfRules: readonly Evidence[] = [
  ...cases(
    `${machineFolder}/rules/rules.test.ts`,
    () => 'of machineRules',
    machineRules.map(({ id }) => id),
  ),
  ...cases(
    'packages/core/src/demand/rules/rules.test.ts',
    () => 'of demandRules',
    demandRules.map(({ id }) => id),
  ),
  ...cases(
    'packages/core/src/alarm/alarm.test.ts',
    () => 'of alarmRules',
    alarmRules.map(({ rule }) => rule),
  ),
  ...cases(
    'packages/core/src/chain/rules/rules.test.ts',
    row,
    chainRules.map(({ id }) => id),
  ),
  ...cases(
    'packages/core/src/wiring/wiring.test.ts',
    row,
    wiringRules.map(({ id }) => id),
  ),
  ...cases(
    'packages/core/src/hazardous-area/rules/rules.test.ts',
    row,
    areaRules.map(({ id }) => id),
  ),
];
