import { level } from '../../../packages/core/src/index.ts';
import { known } from '../../reading.ts';
import { speedOf } from '../healthy.ts';
import { type InjectedFault, loops, pair, sizes, times } from './injected-fault.ts';
import {
  declared,
  loopRunning,
  type Making,
  pairRunning,
  predictionAt,
  run,
  sensitivityAt,
  tapped,
} from './records.ts';

const pumps = ['P-301/iepe-portable', 'P-301/charge'];
const online = ['P-301/iepe-online'];

/** Acceleration at which the electronics of a chain reach the end of their swing. */
function swingOf({ place }: Making): number {
  const { bias } = predictionAt(place);
  const { swing } = known(bias!);
  return Math.min(swing.top, swing.bottom) / sensitivityAt(place);
}

/** Knocks of an impeller at a level, as peak acceleration: noise whose peaks are about four times its rms. */
const knocks = (peak: number) => ({
  name: 'knocks',
  level: level('acceleration', peak / 4, 'rms'),
  band: { low: 100, high: 2000 },
});

const bearing = 'pump-drive-end';
const shaftOf = ({ place }: Making) => place.machine.frequencies.reference;

/** Faults that show while the machine runs. */
export const runningFaults: readonly InjectedFault[] = [
  {
    fault: 'clipping at both rails',
    check: 'clipping',
    sized: 'peak of the motion over what the electronics can swing',
    sizes: times(1.1, 1.5, 3),
    cause: /too small|too sensitive/,
    places: pumps,
    make: (making, size) => ({ records: [run(making, { script: { background: [knocks(size * swingOf(making))] } })] }),
  },
  {
    fault: 'clipping at one rail',
    check: 'clipping',
    sized: 'direct voltage the electronics stand at, of a designed 10 V to 14 V; peaks of 5 V',
    sizes: sizes(['6 V', 6], ['4.5 V', 4.5], ['3 V', 3]),
    cause: /bias stands off|supply is too low/,
    places: pumps,
    make: (making, size) => ({
      records: [
        run(making, {
          defects: [{ kind: 'bias-off-centre', size }],
          script: { background: [knocks(5 / sensitivityAt(making.place))] },
        }),
      ],
    }),
  },
  {
    fault: 'slew into the cable',
    check: 'slew',
    sized: 'slope that the current drives into the cable over the rms slope of the signal, recorded at 102.4 kHz',
    sizes: times(3, 1, 0.3),
    cause: /triangles|more capacitance/,
    places: pumps,
    make: (making, size) => {
      const { current, capacitance } = known(predictionAt(making.place).drive!);
      const burst = {
        name: 'bursts',
        level: level('acceleration', 1 / sensitivityAt(making.place), 'rms'),
        band: { low: 4000, high: 18_000 },
      };
      // Of noise of 1 V evenly between both edges.
      const slope = 2 * Math.PI * Math.sqrt((18_000 ** 3 - 4000 ** 3) / 3 / 14_000);
      return {
        records: [
          run(making, {
            defects: [{ kind: 'cable-slew', size: (size * slope) / (current / capacitance) }],
            script: { seconds: 1, lead: 0.2, rate: 102_400, background: [burst] },
            chain: { recordRate: 102_400 },
          }),
        ],
      };
    },
  },
  {
    fault: 'mount loose, while running',
    check: 'loose-mount',
    sized: 'mounted resonance over the predicted one, by taps beside; the foot strikes once per turn',
    sizes: times(0.7, 0.5, 0.3),
    cause: /mount is loose/,
    places: online,
    make: (making, size) => {
      const resonance = size * known(predictionAt(making.place).chain.transducer.mountedResonance!);
      return {
        records: [
          run(making, { defects: [{ kind: 'loose-mount', size }] }),
          tapped(making, { facts: { mountedResonance: resonance } }),
        ],
      };
    },
  },
  {
    fault: 'no filter before the converter',
    check: 'aliasing',
    sized: 'carrier of the converter at 4 kHz as a peak acceleration, recorded at 5.12 kHz',
    sizes: sizes(['0.02 m/s²', 0.02], ['0.2 m/s²', 0.2], ['2 m/s²', 2]),
    cause: /low-pass|without a filter/,
    places: pumps,
    make: (making, size) => ({
      records: [
        run(making, {
          defects: [{ kind: 'missing-filter' }],
          script: {
            rate: 20_480,
            faults: [{ kind: 'converter-carrier', at: 'motor', size: level('acceleration', size, 'peak') }],
          },
        }),
      ],
    }),
  },
  {
    fault: 'speed written down wrongly',
    check: 'recorded-speed',
    sized: 'written down over true',
    sizes: times(1.015, 1.05, 1.2),
    cause: /another speed than was written/,
    places: pumps,
    make: (making, size) => {
      const { place } = making;
      const speed = declared(making, size * speedOf(place.machine, place.point));
      const size_ = level('velocity', 2e-3, 'rms');
      // Once per turn with its multiples, as every machine shows some.
      const faults = [{ kind: 'misalignment', at: 'motor', size: size_ }];
      return { records: [run(making, { script: { faults } }, speed)] };
    },
  },
  {
    fault: 'channels X and Y exchanged',
    check: 'orbit-direction',
    sized: 'short over long axis of the orbit',
    sizes: times(0.05, 0.2, 0.8),
    cause: /exchanged/,
    places: pair,
    make: (making, size) => {
      const [x, y] = pairRunning(making, { ratio: size, size: 1e-5 });
      return {
        records: [
          { ...y, channel: 'X' },
          { ...x, channel: 'Y' },
        ],
      };
    },
  },
  {
    fault: 'cross-talk',
    check: 'cross-talk',
    sized: "the neighbour's signal in the channel over its own",
    sizes: times(1, 5, 50),
    cause: /open|bridged/,
    places: pumps,
    make: (making, size) => {
      const own = run({ ...making, seed: making.seed + 1 });
      const neighbour = run(making, { channel: '2' });
      const kept = own.measures.excerpt;
      const mixed = run(
        { ...making, seed: making.seed + 1 },
        {
          volts: (volts) => volts.map((each, n) => each + size * (neighbour.measures.excerpt[n] ?? 0)),
        },
      );
      return { records: [kept.length > 0 ? mixed : own, neighbour] };
    },
  },
  {
    fault: 'loop short of voltage',
    check: 'loop-ceiling',
    sized: 'highest current the loop reaches, on a machine whose level swings about 90 % of the range',
    sizes: sizes(['19.5 mA', 0.0195], ['17 mA', 0.017], ['12 mA', 0.012]),
    cause: /too much resistance/,
    places: loops,
    make: (making, size) => ({
      records: [loopRunning(making, { defects: [{ kind: 'loop-compliance', size }] }, { low: 48, high: 52 }, 0.9)],
    }),
  },
  {
    fault: 'bearing: outer ring',
    check: 'machine-faults',
    sized: 'peak of one blow as acceleration, on a healthy machine',
    sizes: sizes(['1 m/s²', 1], ['5 m/s²', 5], ['20 m/s²', 20]),
    cause: /outer ring/,
    places: pumps,
    make: (making, size) => ({
      records: [
        run(making, {
          script: {
            rate: 25_600,
            seconds: 8,
            faults: [{ kind: 'outer-ring', at: bearing, size: level('acceleration', size, 'peak') }],
          },
          chain: { recordRate: 25_600 },
        }),
      ],
    }),
  },
  {
    fault: 'misalignment',
    check: 'machine-faults',
    sized: 'twice per turn over the limit of the point of 5.1 mm/s rms',
    sizes: times(0.5, 1.2, 3),
    cause: /misalignment/,
    places: pumps,
    make: (making, size) => ({
      records: [
        run(making, {
          script: {
            faults: [{ kind: 'misalignment', at: 'motor', size: level('velocity', size * 5.1e-3, 'rms') }],
          },
        }),
      ],
    }),
  },
  {
    fault: 'unbalance',
    check: 'machine-faults',
    sized: 'once per turn over the limit of the point of 5.1 mm/s rms, recorded at two speeds',
    sizes: times(0.5, 1.5, 4),
    cause: /^unbalance/,
    places: pumps,
    make: (making, size) => {
      const { place } = making;
      const fast = speedOf(place.machine, place.point);
      const script = (at: number, by: number) => ({
        course: { is: 'steady', at } as const,
        healthy: 0.2,
        faults: [{ kind: 'unbalance', at: shaftOf(making), size: level('velocity', by * size * 5.1e-3, 'rms') }],
      });
      const slower = 0.75;
      return {
        records: [
          run(making, { script: { ...script(fast, 1), course: { is: 'steady', at: 'highest' } } }),
          run(
            { ...making, seed: making.seed + 1 },
            { script: script(fast * slower, slower ** 3), recording: 'slower.wav' },
            declared(making, fast * slower),
          ),
        ],
      };
    },
  },
];
