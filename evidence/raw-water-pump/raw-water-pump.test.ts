import {
  appraisal,
  type ChainParts,
  type Design,
  type DesignedPoint,
  design,
  frequencyAtState,
  magnitudeOf,
  type Prediction,
  slewLimit,
  smear,
  usableFrequency,
  visibility,
} from '../../packages/core/src/index.ts';
import { type AnswersById, examplePlant, heldAgainstReference, known } from '../reading.ts';

const designed: Design = design(examplePlant('raw-water-pump'), 1);
const machine = designed.machines[0]!;
const [route, loop] = machine.points as [DesignedPoint, DesignedPoint];
const { catalogue, policy } = designed.plant;

const part = <S extends 'transducers' | 'mounts' | 'inputs' | 'supplies' | 'cables'>(shelf: S, name: string) =>
  (catalogue[shelf] as readonly { name: string }[]).find((each) => each.name === name) as (typeof catalogue)[S][number];

function appraised(point: DesignedPoint, change: Partial<ChainParts>) {
  return appraisal(point.point, { ...point.stated.way!, ...point.stated.chosen!, ...change }, policy);
}

const line = (name: string, state: 'lowest' | 'highest') => known(frequencyAtState(machine.frequencies, name, state));

const lines: Readonly<Record<string, string>> = {
  fr: 'pump/1x',
  half: 'pump/half-order',
  twoLF: 'motor/twice-line',
  pole_pass: 'motor/pole-pass',
  VPF: 'impeller/vane-pass',
  RBPF: 'motor/rotor-bar-pass',
  RB_up: 'motor/rotor-bar-pass-upper',
  pBPFO: 'pump-drive-end/outer-ring',
  pBPFI: 'pump-drive-end/inner-ring',
  pBSF: 'pump-drive-end/element-spin',
  pFTF: 'pump-drive-end/cage',
  mBPFO: 'motor-drive-end/outer-ring',
  mBPFI: 'motor-drive-end/inner-ring',
  mBSF: 'motor-drive-end/element-spin',
  mFTF: 'motor-drive-end/cage',
};

const gravity = 9.80665;
const verdict = (outcome: string) =>
  outcome === 'meets' || outcome === 'warns' ? 'PASS' : outcome === 'fails' ? 'FAIL' : 'ASK';
const responseError = (predicted: Prediction, frequency: number) =>
  100 * (magnitudeOf(known(predicted.response)(frequency)) - 1);
const overload = (input: string) =>
  Math.min(...appraised(route, { input: part('inputs', input) }).prediction.ceilings.map((each) => known(each).peak)) /
  gravity;
const register = (name: string) => loop.alarms!.register.find((row) => row.name === name)!;
const budgetOf = (entered: 'individual' | 'nominal') =>
  100 *
  known(route.budgets.find((each) => each.target === '1x at lowest speed' && each.entered === entered)!.budget)
    .expandedUncertainty;
const set = (name: string) => route.settings.sets.find((each) => each.name === name)!;
const setNames: Readonly<Record<string, string>> = {
  spectrum: 'velocity-spectrum',
  low: 'low-range',
  env: 'envelope-spectrum',
};

const online = () =>
  appraised(route, { input: part('inputs', 'ONL-24'), cableLength: { known: true, value: 85 } }).prediction;
const driven = (volts: number) => {
  const { current, capacitance } = known(online().drive);
  return slewLimit(capacitance, current, 0, volts);
};
const loaded = () =>
  appraised(loop, { inLine: [...loop.stated.way!.inLine, part('supplies', 'IND-250'), part('supplies', 'BAR-340')] });

/** Our answer to each expected id, by the shape of the id. */
const answers: AnswersById = [
  [/^S01\.freq\.(25|50)Hz\.rpm$/, ([, hertz]) => 60 * line('pump/1x', hertz === '25' ? 'lowest' : 'highest')],
  [/^S01\.freq\.(25|50)Hz\.(\w+)$/, ([, hertz, name]) => line(lines[name!]!, hertz === '25' ? 'lowest' : 'highest')],
  [/^S01\.band\.low$/, () => line('pump/half-order', 'lowest')],
  [/^S01\.band\.high_velocity$/, () => set('velocity-spectrum').reach!.value],
  [
    /^S01\.P-DE-H\.verdict\.(.+)@(.+)$/,
    ([, name, mount]) =>
      verdict(appraised(route, { transducer: part('transducers', name!), mount: part('mounts', mount!) }).outcome),
  ],
  [
    /^S01\.P-DE-loop\.verdict\.(.+)@(.+)$/,
    ([, name, mount]) =>
      verdict(appraised(loop, { transducer: part('transducers', name!), mount: part('mounts', mount!) }).outcome),
  ],
  [
    /^S01\.mount\.(.+)\.f_mounted$/,
    ([, mount]) =>
      known(appraised(route, { mount: part('mounts', mount!) }).prediction.chain.transducer.mountedResonance),
  ],
  [
    /^S01\.mount\.(.+)\.f_plus10pct$/,
    ([, mount]) =>
      usableFrequency(
        known(appraised(route, { mount: part('mounts', mount!) }).prediction.chain.transducer.mountedResonance),
        undefined,
        { low: -0.1, high: 0.1 },
      ),
  ],
  [/^S01\.alarm\.alert$/, () => 1000 * known(loop.alarms!.setPoints.alert).value],
  [/^S01\.alarm\.alert_cap$/, () => 1000 * known(loop.alarms!.setPoints.alertCap).value],
  [/^S01\.alarm\.trip$/, () => 1000 * known(loop.alarms!.setPoints.trip).value],
  [/^S01\.alarm\.trip_cap$/, () => 1000 * known(loop.alarms!.setPoints.tripCap).value],
  [/^S01\.loop\.mA\.(\w+)$/, ([, name]) => 1000 * known(register(name!).current)],
  [/^S01\.loop\.counts16\.(\w+)$/, ([, name]) => known(register(name!).counts)],
  [/^S01\.loop\.R_total$/, () => known(loop.appraisal!.prediction.loop!.resistance)],
  [/^S01\.loop\.R_max$/, () => known(loop.appraisal!.prediction.loop!.largestResistance)],
  [/^S01\.loop\.margin_V$/, () => known(loop.appraisal!.prediction.loop!.spare)],
  [
    /^S01\.loop\.ok$/,
    () => loop.appraisal!.judgements.find((each) => each.rule === 'chain/loop-load')!.outcome === 'meets',
  ],
  [
    /^S01\.loop\.whatif_indicator_and_barrier\.ok$/,
    () => loaded().judgements.find((each) => each.rule === 'chain/loop-load')!.outcome === 'meets',
  ],
  [
    /^S01\.LPV-25\.error_at_6\.22Hz$/,
    () => responseError(loop.appraisal!.prediction, line('pump/half-order', 'lowest')),
  ],
  [/^S01\.LPV-25\.error_at_12\.44Hz$/, () => responseError(loop.appraisal!.prediction, line('pump/1x', 'lowest'))],
  [/^S01\.LPV-25\.error_at_24\.77Hz$/, () => responseError(loop.appraisal!.prediction, line('pump/1x', 'highest'))],
  [/^S01\.headroom\.(.+)\.FS_g$/, ([, input]) => overload(input!)],
  [
    /^S01\.noise\.velocity_2_1000$/,
    () => 1000 * known(visibility(route.point.targets[0]!, route.appraisal!.prediction)).noise.value,
  ],
  [
    /^S01\.noise\.accel_2k_10k$/,
    () => known(visibility(route.point.targets[4]!, route.appraisal!.prediction)).noise.value / gravity,
  ],
  [/^S01\.cable85m\.slew_full_swing$/, () => driven(known(online().bias).swing.bottom)],
  [/^S01\.cable85m\.slew_5g$/, () => driven(5 * gravity * known(online().chain.transducer.sensitivity))],
  [/^S01\.uncertainty\.with_cal_value\.U$/, () => budgetOf('individual')],
  [/^S01\.uncertainty\.nominal_sens\.U$/, () => budgetOf('nominal')],
  [/^S01\.acq\.(spectrum|low|env)\.Fmax$/, ([, name]) => set(setNames[name!]!).highestFrequency],
  [/^S01\.acq\.(spectrum|low|env)\.lines$/, ([, name]) => set(setNames[name!]!).lines],
  [/^S01\.acq\.(spectrum|low|env)\.df$/, ([, name]) => set(setNames[name!]!).resolution],
  [/^S01\.acq\.(spectrum|low|env)\.T$/, ([, name]) => set(setNames[name!]!).recordLength],
  [
    /^S01\.acq\.smear_at_RBPF_for_0\.1pct_speed$/,
    () => smear(line('motor/rotor-bar-pass', 'highest'), 0.001, set('velocity-spectrum').resolution).hertz,
  ],
];

heldAgainstReference('raw-water-pump', 'S01', answers);
