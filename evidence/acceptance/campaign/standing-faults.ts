import { recordedIn } from '../../../packages/core/src/acceptance/testing/as-measured.ts';
import { answer } from '../../../packages/core/src/index.ts';
import { known } from '../../reading.ts';
import {
  accelerometers,
  biased,
  casing,
  type InjectedFault,
  loops,
  pair,
  resonant,
  sizes,
  times,
} from './injected-fault.ts';
import {
  atRest,
  besideReference,
  calibrated,
  curve,
  type Making,
  pairRunning,
  poweredOn,
  predictionAt,
  rolled,
  sensitivityAt,
  steps,
  stopped,
  tapped,
} from './records.ts';

const resonanceAt = ({ place }: Making) => known(predictionAt(place).chain.transducer.mountedResonance!);
const volts = (by: number) => (samples: Float64Array) => samples.map((each) => each + by);

/** Six ratios of people and one of nobody, read off a calibrator. */
const ratios = [Math.SQRT2, 2 * Math.SQRT2, 5, 9.80665, 10, 25.4, 39.37];

function wrongSensitivity(ratio: number, cause: RegExp): InjectedFault {
  return {
    fault: `scale wrong by ${Number(ratio.toPrecision(4))}`,
    check: 'sensitivity',
    sized: 'reading over truth, on a calibrator of ± 3 % and a piece within its tolerance',
    sizes: sizes(['too large', ratio], ['too small', 1 / ratio]),
    cause,
    places: accelerometers,
    make: (making, size) => ({ records: [calibrated(making, { defects: [{ kind: 'sensitivity', size }] })] }),
  };
}

/** Faults that show while the machine stands: direct voltage, noise, taps, calibrator, tables. */
export const standingFaults: readonly InjectedFault[] = [
  {
    fault: 'bias: shorted',
    check: 'bias',
    sized: 'direct voltage left across the pair',
    sizes: sizes(['1.2 V', 1.2], ['0.4 V', 0.4], ['0.05 V', 0.05]),
    cause: /short/,
    places: biased,
    make: (making, size) => ({ records: [atRest(making, { defects: [{ kind: 'bias-short', size }] })] }),
  },
  {
    fault: 'bias: leakage',
    check: 'bias',
    sized: 'direct voltage found, of a designed 10 V to 14 V',
    sizes: sizes(['9 V', 9], ['7 V', 7], ['4 V', 4]),
    cause: /leakage/,
    places: biased,
    make: (making, size) => ({ records: [atRest(making, { defects: [{ kind: 'bias-wet', size }] })] }),
  },
  {
    fault: 'bias: open',
    check: 'bias',
    sized: 'direct voltage found, of a supply of 24 V',
    sizes: sizes(['22 V', 22], ['23 V', 23], ['24 V', 24]),
    cause: /open/,
    places: biased,
    make: (making, size) => ({ records: [atRest(making, { defects: [{ kind: 'bias-open', size }] })] }),
  },
  {
    fault: 'settling too slow',
    check: 'settling',
    sized: 'time to settle over the designed one',
    sizes: times(2, 3, 5),
    cause: /leakage|lower corner/,
    places: biased,
    make: (making, size) => ({ records: [poweredOn(making, size)] }),
  },
  {
    fault: 'noise floor too high',
    check: 'noise-floor',
    sized: 'noise over the predicted one, machine stopped',
    sizes: times(2, 3, 6),
    cause: /input, range or gain|moisture/,
    places: casing,
    make: (making, size) => ({ records: [stopped({ ...making, noise: size })] }),
  },
  {
    fault: 'channel dead',
    check: 'noise-floor',
    sized: 'noise over the predicted one, machine stopped',
    sizes: times(0.25, 0.1, 0.01),
    cause: /nothing is connected/,
    places: biased,
    make: (making, size) => ({
      records: [stopped({ ...making, noise: 1 }, { volts: (each) => each.map((x) => size * x) })],
    }),
  },
  {
    fault: 'mains hum',
    check: 'mains-hum',
    sized: 'hum at the terminal, as the peak acceleration that its voltage looks like',
    sizes: sizes(['0.02 m/s²', 0.02], ['0.1 m/s²', 0.1], ['1 m/s²', 1]),
    cause: /ground loop/,
    places: accelerometers,
    make: (making, size) => {
      const defects = [{ kind: 'mains-hum', size: (size * sensitivityAt(making.place)) / Math.SQRT2 }];
      return { records: [stopped(making, { defects })] };
    },
  },
  {
    fault: 'ski slope',
    check: 'ski-slope',
    sized: 'step at the transducer that is still settling',
    sizes: sizes(['1 mV', 0.001], ['0.1 V', 0.1], ['5 V', 5]),
    cause: /settling/,
    places: biased,
    make: (making, size) => ({ records: [stopped(making, { defects: [{ kind: 'ski-slope', size }] })] }),
  },
  {
    fault: 'mount loose, by taps',
    check: 'resonance',
    sized: 'mounted resonance over the predicted one',
    sizes: times(0.7, 0.5, 0.3),
    cause: /loose/,
    places: resonant,
    make: (making, size) => ({
      records: [tapped(making, { facts: { mountedResonance: size * resonanceAt(making) } })],
    }),
  },
  {
    fault: 'wrong channel',
    check: 'tap-place',
    sized: 'reaction here over that of the neighbour beside which it was tapped',
    sizes: times(0.8, 0.5, 0.1),
    cause: /exchanged/,
    places: ['P-301/iepe-online'],
    make: (making, size) => {
      const other = making.place.machine.points.find(({ point }) => point.of !== making.place.name)!.point.of;
      return {
        records: [
          tapped(making, { volts: (each) => each.map((x) => size * x) }),
          tapped({ ...making, seed: making.seed + 1 }, { at: other, channel: '2' }, { beside: making.place.name }),
        ],
      };
    },
  },
  {
    fault: 'polarity reversed, by taps',
    check: 'tap-polarity',
    sized: 'taps that were given',
    sizes: sizes(['3 taps', 3], ['5 taps', 5], ['8 taps', 8]),
    cause: /cores are exchanged/,
    places: resonant,
    make: (making, size) => ({
      records: [tapped(making, { defects: [{ kind: 'polarity', size: 1 }] }, { taps: size })],
    }),
  },
  {
    fault: 'polarity reversed, beside a reference',
    check: 'reference-phase',
    sized: 'noise of the channel over what it shares with the reference',
    sizes: sizes(['0.2', 0.2], ['0.1', 0.1], ['0.02', 0.02]),
    cause: /polarity/,
    places: accelerometers,
    make: (making, size) => {
      const { record, serving } = besideReference(making, { defects: [{ kind: 'polarity', size: 1 }] }, size);
      return { records: [record], beside: { serving: [serving] } };
    },
  },
  {
    fault: 'delay beside a reference',
    check: 'reference-phase',
    of: 'delay',
    sized: 'samples of delay at 5.12 kHz',
    sizes: sizes(['1 sample', 1], ['2 samples', 2], ['10 samples', 10]),
    cause: /sampled one after the other/,
    places: accelerometers,
    make: (making, size) => {
      const { record, serving } = besideReference(making, { defects: [{ kind: 'delay', size: size / 5120 }] });
      return { records: [record], beside: { serving: [serving] } };
    },
  },
  wrongSensitivity(ratios[0]!, /^(peak shown where rms|rms shown where peak) was expected$/),
  wrongSensitivity(ratios[1]!, /^(peak-to-peak shown where rms|rms shown where peak-to-peak) was expected$/),
  wrongSensitivity(ratios[2]!, /a fifth as sensitive|five times as sensitive/),
  wrongSensitivity(ratios[3]!, /^(m\/s² read where g|g read where m\/s²) was meant$/),
  wrongSensitivity(ratios[4]!, /ten times off/),
  wrongSensitivity(ratios[5]!, /millimetres|inches/),
  wrongSensitivity(ratios[6]!, /inches/),
  {
    fault: 'scale wrong by no ratio of people',
    check: 'sensitivity',
    sized: 'reading over truth',
    sizes: times(1.12, 1.25, 0.7),
    cause: /cable|amplifier|input|transducer/,
    places: accelerometers,
    make: (making, size) => ({ records: [calibrated(making, { defects: [{ kind: 'sensitivity', size }] })] }),
  },
  {
    fault: 'sensitivity told wrongly to the recorder',
    check: 'recorder-sensitivity',
    sized: 'sensitivity told over that of the design',
    sizes: times(1.12, 5, 9.80665),
    cause: /sensitive|g |another transducer/,
    places: accelerometers,
    make: (making, size) => ({
      records: [
        stopped(making, {
          statement: {
            unit: answer(recordedIn('m/s2', 'acceleration')),
            sensitivity: answer(sensitivityAt(making.place) * size),
          },
          volts: (each) => each.map((x) => x / sensitivityAt(making.place) / size),
        }),
      ],
    }),
  },
  {
    fault: 'gap set wrongly',
    check: 'gap',
    of: 'setting',
    sized: 'volts off a setting of −10 V that is true to 0.25 V',
    sizes: sizes(['0.6 V', 0.6], ['1 V', 1], ['3 V', 3]),
    cause: /gap was set otherwise/,
    places: pair,
    make: (making, size) => {
      const set = 0.25 * (2 * making.random.uniform() - 1);
      return { records: [atRest(making, { channel: 'X', volts: volts(size + set) })] };
    },
  },
  {
    fault: 'gap shifted at speed',
    check: 'gap',
    of: 'shift since rest',
    sized: 'shift over the diametral clearance',
    sizes: times(1.25, 1.5, 2.5),
    cause: /bearing/,
    places: pair,
    make: (making, size) => {
      const clearance = known(making.place.point.probes!.around.clearance);
      const by = size * clearance * sensitivityAt(making.place);
      const [x, y] = pairRunning(making, {}, { x: { volts: volts(by) } });
      return { records: [atRest(making, { channel: 'X' }), x, y] };
    },
  },
  {
    fault: 'slow-roll run-out',
    check: 'run-out',
    sized: 'run-out over the allowance of 6.35 µm peak-to-peak',
    sizes: times(1.1, 1.5, 3),
    cause: /magnetism|bowed|round/,
    places: pair,
    make: (making, size) => ({ records: [rolled(making, size * 6.35e-6)] }),
  },
  {
    fault: 'probe curve too steep',
    check: 'probe-curve',
    of: 'slope',
    sized: 'slope over the designed one',
    sizes: times(1.06, 1.1, 1.25),
    cause: /electrical length|steel/,
    places: pair,
    make: (making, size) => ({ records: [], beside: { readings: [curve(making, size)] } }),
  },
  {
    fault: 'probe curve bent',
    check: 'probe-curve',
    of: 'straightness',
    sized: 'how far it bends at its ends',
    sizes: sizes(['60 µm', 6e-5], ['100 µm', 1e-4], ['300 µm', 3e-4]),
    cause: /range ends earlier|steel/,
    places: pair,
    make: (making, size) => ({ records: [], beside: { readings: [curve(making, 1, 10, size)] } }),
  },
  {
    fault: 'loop: display of another range',
    check: 'loop-scale',
    of: 'display',
    sized: 'displayed over true',
    sizes: times(1.01, 1.05, 2),
    cause: /range|expected|sensitive/,
    places: loops,
    make: (making, size) => ({
      records: [],
      beside: { readings: [steps(making, { shown: (share) => size * share })] },
    }),
  },
  {
    fault: 'loop: display without live zero',
    check: 'loop-scale',
    of: 'display',
    sized: 'share of the live zero that is left out',
    sizes: times(0.05, 0.5, 1),
    cause: /live zero|range|leak/,
    places: loops,
    make: (making, size) => ({
      records: [],
      beside: { readings: [steps(making, { shown: (share) => share + 0.2 * size * (1 - share) })] },
    }),
  },
  {
    fault: 'loop: counts of another card',
    check: 'loop-scale',
    of: 'counts',
    sized: 'counts over the designed ones',
    sizes: times(0.98, 0.9, 0.5),
    cause: /range|expected|sensitive/,
    places: loops,
    make: (making, size) => ({
      records: [],
      beside: { readings: [steps(making, { counted: (share) => size * share })] },
    }),
  },
  {
    fault: 'loop: failure not reported',
    check: 'loop-scale',
    of: 'low failure current',
    sized: 'nothing to size',
    sizes: sizes(['3.5 mA', 0.0035]),
    cause: /no fault limits/,
    places: loops,
    make: (making) => ({ records: [], beside: { readings: [steps(making, { fault: false })] } }),
  },
];
