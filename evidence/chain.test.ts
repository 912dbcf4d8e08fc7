import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { isolatedGain, lumpedLine, seriesImpedance, shuntAdmittance } from '../packages/core/src/chain/two-port.ts';
import {
  answer,
  bandNoise,
  noiseAtEnd,
  type Prediction,
  type Stage,
  slewLimit,
  standardGravity,
  visibility,
} from '../packages/core/src/index.ts';
import { complex, oneComplex } from '../packages/core/src/signal/complex.ts';
import { cable, changed, input, known, mount, point, predicted, supply, transducer } from './bench.ts';
import { besideProject, type ExpectedAnswer, root, within } from './reading.ts';

/** The chain beside two tools that know nothing of it: a circuit simulator and a numerical library. */
const stored = <T>(file: string): T => JSON.parse(readFileSync(resolve(root, 'evidence', file), 'utf8')) as T;

type Rows = readonly (readonly [number, number, number])[];

interface Circuits {
  readonly ac: Readonly<Record<string, { readonly title: string; readonly 'frequency-re-im': Rows }>>;
  readonly clip: Readonly<Record<string, { title: string; rest: number; highest: number; lowest: number }>>;
  readonly slew: { readonly runs: readonly { frequency: number; rise: number; fall: number; highest: number }[] };
  readonly noise: {
    readonly 'noise-carried': readonly (readonly [number, number])[];
    readonly 'noise-of-100-kohm': readonly (readonly [number, number])[];
  };
}

interface Responses {
  readonly frequencies: readonly number[];
  readonly coupling_0_1_hz: { readonly re: readonly number[]; readonly im: readonly number[] };
  readonly responses: readonly { name: string; re: readonly number[]; im: readonly number[] }[];
  readonly noise: readonly {
    sensor: string;
    input: string;
    low: number;
    high: number;
    integrations: 0 | 1 | 2;
    total: number;
    of_sensor: number;
    of_input: number;
    at: number;
    density: number;
  }[];
}

const circuits = stored<Circuits>('ngspice/chain.json');
const library = stored<Responses>('scipy/chain-responses.json');

const acc100 = { metres: 85, transducer: transducer('ACC-100'), input: input('ONL-24') };
const acc500 = { metres: 140, transducer: transducer('ACC-500'), cable: cable('FEP'), input: input('ONL-24') };
const coil = {
  metres: 300,
  transducer: changed(transducer('MCV-20'), { coilResistance: '600 ohm' }),
  cable: cable('COAX'),
  input: changed(input('RACK-DC'), { inputResistance: '10 kohm' }),
};

/** The largest distance between our response and another one, over the size of the other. */
function distance(chain: Prediction, rows: Rows, factor: number, upTo = Number.POSITIVE_INFINITY): number {
  const response = known(chain.response);
  const apart = rows
    .filter(([frequency]) => frequency <= upTo)
    .map(([frequency, re, im]) => {
      const ours = response(frequency);
      return Math.hypot(ours.re - factor * re, ours.im - factor * im) / Math.hypot(factor * re, factor * im);
    });
  return Math.max(...apart);
}

const loadedInput = changed(input('ONL-24'), { inputResistance: '100 kohm' });

/** Circuit, our chain, and the volts per unit of motion of its nominal sensitivity. */
const sweeps: readonly (readonly [string, Prediction, number])[] = [
  ['acc-100-tsp-85m', predicted(acc100), 0.1],
  ['acc-100-tsp-85m-loaded', predicted({ ...acc100, input: loadedInput }), 0.1],
  ['acc-500-fep-140m', predicted(acc500), 0.5],
  ['acc-500-fep-140m-loaded', predicted({ ...acc500, input: loadedInput }), 0.5],
  ['mcv-20-coax-300m-loaded', predicted(coil), 20],
];

test.each(sweeps)('independent: response of %s, magnitude and phase, is that of the circuit (ngspice)', (...sweep) => {
  const [name, chain, sensitivity] = sweep;
  const rows = circuits.ac[name]!['frequency-re-im'];
  expect(rows.length).toBeGreaterThan(190);
  expect(distance(chain, rows, 1 / sensitivity)).toBeLessThan(1e-8);
});

test.each(sweeps.slice(0, 4))(
  'independent: %s is not told apart from a chain with another load by accident',
  (...sweep) => {
    const [name, chain, sensitivity] = sweep;
    const other = name.endsWith('-loaded') ? name.replace('-loaded', '') : `${name}-loaded`;
    // 106 or 117 ohm before 100 kohm take a little more than a thousandth: the comparison above sees far smaller things.
    expect(distance(chain, circuits.ac[other]!['frequency-re-im'], 1 / sensitivity)).toBeGreaterThan(1e-3);
  },
);

test.each([
  ['acc-100-tsp-85m-distributed', predicted(acc100), 0.1],
  ['acc-500-fep-140m-distributed', predicted(acc500), 0.5],
] as const)('independent: the lumped cable stands for the distributed line of %s (ngspice)', (...sweep) => {
  const [name, chain, sensitivity] = sweep;
  const rows = circuits.ac[name]!['frequency-re-im'];
  expect(distance(chain, rows, 1 / sensitivity, 10_000)).toBeLessThan(2e-4);
  expect(distance(chain, rows, 1 / sensitivity, 50_000)).toBeLessThan(1e-2);
});

/** The circuit's output stage and supply turn over within some 10 mV. */
const knee = 0.06;

test.each([
  ['bias-10-line-0', '10 V', undefined],
  ['bias-12-line-0', '12 V', undefined],
  ['bias-14-line-0', '14 V', undefined],
  ['bias-12-line-500', '12 V', '500 ohm'],
  ['bias-14-line-340', '14 V', '340 ohm'],
] as const)('independent: a growing sine clips where the bias window ends, %s (ngspice)', (name, bias, line) => {
  const { rest, highest, lowest } = circuits.clip[name]!;
  const chain = predicted({
    metres: 0,
    transducer: changed(transducer('ACC-100'), { bias, range: '1000 g peak' }),
    input: input('ONL-24'),
    inLine: line === undefined ? [] : [changed(supply('BAR-340'), { resistance: line })],
  });
  const { top, bottom } = known(chain.bias).swing;
  expect(Math.abs(highest - rest - top)).toBeLessThan(knee);
  expect(Math.abs(rest - lowest - bottom)).toBeLessThan(knee);
  const swing = chain.ceilings.map(known).find((ceiling) => ceiling.name.startsWith('swing'))!;
  const smaller = Math.min(highest - rest, rest - lowest);
  expect(Math.abs((swing.peak / standardGravity) * 0.1 - smaller)).toBeLessThan(knee);
});

test('independent: over the whole bias tolerance the window is the worst of its pieces (ngspice)', () => {
  const { top, bottom } = known(predicted({ metres: 0, input: input('ONL-24') }).bias).swing;
  const [low, high] = [circuits.clip['bias-10-line-0']!, circuits.clip['bias-14-line-0']!];
  expect(Math.abs(high.highest - high.rest - top)).toBeLessThan(knee);
  expect(Math.abs(low.rest - low.lowest - bottom)).toBeLessThan(knee);
});

test('independent: a sine of 5 V on 30 nF becomes triangular at the slew limit, and only upwards (ngspice)', () => {
  const { current, capacitance } = known(predicted({ metres: 300, input: input('ONL-24') }).drive);
  expect(capacitance).toBeCloseTo(30e-9, 12);
  const limit = slewLimit(capacitance, current, 0, 5);
  // 3183.1 Hz: the number of the trade note for 30 nF, 5 V, 4 mA.
  expect(limit).toBeCloseTo(3183.1, 1);
  for (const { frequency, rise, fall } of circuits.slew.runs) {
    const ideal = 2 * Math.PI * frequency * 5;
    // Upwards only what the supply has left pushes, current/C; downwards the output stage pulls as fast as it must.
    expect(Math.abs(rise / Math.min(ideal, current / capacitance) - 1), `${frequency} Hz`).toBeLessThan(3e-3);
    expect(Math.abs(-fall / ideal - 1), `${frequency} Hz`).toBeLessThan(0.02);
    const triangular = rise < 0.998 * ideal;
    expect(triangular, `${frequency} Hz`).toBe(frequency > limit);
  }
});

test('independent: noise carried through a loaded cable and added to the noise behind it (ngspice .noise)', () => {
  const thermal = (ohms: number) => circuits.noise['noise-of-100-kohm'][0]![1] * Math.sqrt(ohms / 100e3);
  const stage = (name: string, rest: Pick<Stage, 'through'> & Partial<Stage>): Stage => ({
    name,
    part: 'bench',
    enters: 'voltage',
    leaves: 'voltage',
    ...rest,
  });
  const stages = [
    stage('source', { through: () => seriesImpedance(complex(100e3, 0)), noise: answer(() => thermal(100e3)) }),
    stage('line', { through: (f) => lumpedLine(2 * 0.037 * 85, 0.65e-6 * 85, 100e-12 * 85, 2 * Math.PI * f) }),
    stage('load', { through: () => shuntAdmittance(complex(1e-5, 0)) }),
    stage('buffer', { through: () => isolatedGain(oneComplex), noise: answer(() => thermal(10e3)) }),
  ];
  const rows = circuits.noise['noise-carried'];
  expect(rows.length).toBeGreaterThan(50);
  for (const [frequency, density] of rows) {
    expect(Math.abs(known(noiseAtEnd(stages))(frequency) / density - 1), `${frequency} Hz`).toBeLessThan(1e-7);
  }
});

const partOf = ([name, on]: readonly string[]) => ({ transducer: transducer(name!), mount: mount(on!) });
const cardOf = (name: string) => (name.startsWith('LP') ? { input: input('AI-16') } : {});

test.each(library.responses.map((each) => [each.name, each] as const))(
  'independent: response of %s, magnitude and phase (scipy.signal.freqs)',
  (name, { re, im }) => {
    const coupled = !/^(LP|PRX)/.test(name);
    const chain = predicted({
      ...partOf(name.split(' on ')),
      ...cardOf(name),
      metres: 0,
      ...(name.startsWith('PRX') ? { input: input('RACK-DC') } : {}),
    });
    const { coupling_0_1_hz: c } = library;
    const rows = library.frequencies.map((frequency, i): readonly [number, number, number] => {
      const [x, y] = coupled ? [c.re[i]!, c.im[i]!] : [1, 0];
      return [frequency, re[i]! * x - im[i]! * y, re[i]! * y + im[i]! * x];
    });
    expect(distance(chain, rows, 1)).toBeLessThan(1e-8);
  },
);

test.each(
  library.noise.map(
    (each) =>
      [
        `${each.sensor} into ${each.input}, ${each.low}..${each.high} Hz, integrated ${each.integrations} times`,
        each,
      ] as const,
  ),
)('independent: noise of %s (scipy.integrate.quad)', (_name, stored) => {
  const chain = predicted({ metres: 0, transducer: transducer(stored.sensor), input: input(stored.input) });
  const { low, high, integrations } = stored;
  const inBand = (density: (frequency: number) => number) => bandNoise(density, low, high, integrations);
  expect(Math.abs(inBand(known(chain.noise)) / stored.total - 1)).toBeLessThan(1e-5);
  expect(Math.abs(known(chain.noise)(stored.at) / stored.density - 1)).toBeLessThan(1e-9);
  const shares = known(chain.noiseOf).map((share) => inBand(share.density));
  expect(shares).toHaveLength(2);
  expect(Math.abs(shares[0]! / stored.of_sensor - 1)).toBeLessThan(1e-5);
  expect(Math.abs(shares[1]! / stored.of_input - 1)).toBeLessThan(1e-5);
});

test('independent: noise of the raw-water pump as its author gives it, within the 5 % that author allows', ({
  skip,
}) => {
  const text = besideProject('scenarios/S01.expected.json');
  if (text === undefined) return skip('the folder with the reference plants is not beside the project');
  const { expected } = JSON.parse(text) as { expected: ExpectedAnswer[] };
  const bench = point({
    velocity: { see: 'overall', at: '2..1000 Hz', components: ['24.77 Hz'], smallest: '0.5 mm/s rms' },
    bursts: { see: 'burst', at: '2..10 kHz', smallest: '0.1 g peak' },
  });
  const [velocity, bursts] = bench.targets.map((target) => known(visibility(target, predicted())).noise);
  const answers = {
    'S01.noise.velocity_2_1000': 1000 * velocity!.value,
    'S01.noise.accel_2k_10k': bursts!.value / standardGravity,
  };
  for (const [id, ours] of Object.entries(answers)) {
    const theirs = expected.find((each) => each.id === id)!;
    expect(within(theirs, ours), `${id}: ${ours} beside ${theirs.value}`).toBe(true);
  }
  // The same plant's library numbers: a thousandth apart at most from what the screening says.
  const [first, second] = library.noise;
  expect(Math.abs(velocity!.value / first!.total - 1)).toBeLessThan(1e-3);
  expect(Math.abs(bursts!.value / second!.total - 1)).toBeLessThan(1e-3);
});
