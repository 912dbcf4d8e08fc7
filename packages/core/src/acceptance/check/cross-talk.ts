import { measured, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { crossOf } from '../beside-reference.ts';
import { chainOf } from '../expected.ts';
import { type MeasuredRecord, recordName } from '../measured-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets } from './check-kind.ts';

/** By the middle of all lines: above the one two channels are one signal, below the other they are not. */
const same = 0.95;
const own = 0.6;
/** Segments that are needed: of few, everything looks alike. */
const fewest = 8;
/** Lines of the band that are held against each other. */
const band = { low: 0.02, high: 0.4 } as const;

/** Whether two channels of one recording show the same signal, their noise included. */
export const crossTalk = checkKind({
  kind: 'cross-talk',
  title: 'Cross-talk between channels',
  question: 'Does each channel show its own transducer?',
  on: ['running', 'stopped'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  sources: [clause(tradePractice, 'everything equal everywhere is cross-talk')],
  judge: ({ record, others }): readonly Judged[] => {
    const beside = others.filter((each) => each.recording === record.recording);
    if (beside.length === 0) return [];
    const held = beside.flatMap((other) => {
      const alike = alikeness(record, other);
      return alike === undefined ? [] : [{ other, ...alike }];
    });
    const facts = {
      expected: said`below ${own} of everything in common`,
      tolerance: said`from ${same} on two channels are one signal`,
      because: 'Two places of a machine share lines, but not their noise.',
    };
    if (held.length === 0) {
      return [
        cannotTell({ ...facts, because: 'The channels are too short, or not sampled together.' }, [
          'a recording of some seconds of all channels together',
        ]),
      ];
    }
    const most = held.reduce((a, b) => (b.coherence > a.coherence ? b : a));
    const found = said`${measured('ratio', most.coherence, 2)} in common with ${recordName(most.other)}, at ${measured('ratio', most.ratio, 3)} of its size`;
    if (most.coherence < own) return [meets({ ...facts, found })];
    if (most.coherence < same) {
      return [
        cannotTell({ ...facts, found, because: 'Much in common, as of two transducers that stand close.' }, [
          'the same with one transducer unplugged: its channel must fall silent',
        ]),
      ];
    }
    return [
      fails({ ...facts, found }, [
        {
          cause: 'one input is open and takes the signal of its neighbour, or two inputs are bridged',
          evidence: found,
          next: 'Unplug one transducer: its channel must fall silent, the other must not change.',
        },
        {
          cause: 'the same channel was recorded or exported twice',
          evidence: found,
          next: 'Read the channel list of the recorder.',
        },
        {
          cause: 'both returns share one wire, whose drop is in both signals',
          evidence: found,
          next: 'Measure between the returns while one transducer is tapped.',
        },
      ]),
    ];
  },
});

/** Middle coherence over the band, and the middle ratio of this channel to the other. */
function alikeness(record: MeasuredRecord, other: MeasuredRecord) {
  const cross = crossOf(other.measures, record.measures);
  if (!cross.known || cross.value.effectiveAverages < fewest / 2 || cross.value.segments < fewest) return undefined;
  const { coherence, first, second, resolution, rate } = cross.value;
  const [from, to] = [Math.ceil((band.low * rate) / resolution), Math.floor((band.high * rate) / resolution)];
  const middle = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
  const lines = Array.from({ length: Math.max(0, to - from + 1) }, (_, k) => from + k);
  return {
    coherence: middle(lines.map((k) => coherence[k]!)),
    ratio: Math.sqrt(middle(lines.map((k) => second[k]! / (first[k]! + Number.MIN_VALUE)))),
  };
}
