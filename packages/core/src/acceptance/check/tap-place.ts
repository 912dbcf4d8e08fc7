import { inWords, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { type MeasuredRecord, voltsPerNumber } from '../measured-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets } from './check-kind.ts';

/** A tap beside a transducer is seen there this much more strongly than anywhere else. */
const clearly = 1.5;

/** Whether the channel that reacts most to taps is the one they were given beside. */
export const tapPlace = checkKind({
  kind: 'tap-place',
  title: 'Right channel by taps',
  question: 'Is this channel the transducer it is said to be?',
  on: ['taps'],
  applies: () => true,
  sources: [clause(tradePractice, 'a tap is strongest where it is given')],
  judge: ({ record, others }): readonly Judged[] => {
    const beside = placeOf(record);
    // Taps beside another point are judged at that point.
    if (beside !== record.at) return [];
    const facts = {
      expected: said`the strongest reaction of all channels, ${clearly} times the next`,
      tolerance: 'none: nearer than that it is a matter of where exactly the tap went',
      because: 'Exchanged cables show the right machine in the wrong place; only a tap tells.',
    };
    const own = largestTap(record);
    if (own === 0) {
      const loudest = strongest(together(record, others));
      if (loudest === undefined) {
        return [
          cannotTell(
            { ...facts, found: 'no tap in the record', because: 'Nothing stands out of the quiet like a tap.' },
            ['five taps beside the transducer with a small hard tip, a second apart'],
          ),
        ];
      }
      return [fails({ ...facts, found: said`no tap here, but on ${loudest.at}` }, exchanged(loudest.at))];
    }
    const neighbours = together(record, others);
    if (neighbours.length === 0) {
      return [
        cannotTell(
          {
            ...facts,
            found: 'taps seen; no other channel was recorded beside',
            because: 'One channel alone cannot be exchanged visibly.',
          },
          ['the channels of the neighbouring points in the same recording'],
        ),
      ];
    }
    const other = strongest(neighbours);
    const ratio = other === undefined ? Number.POSITIVE_INFINITY : own / largestTap(other);
    const found = Number.isFinite(ratio)
      ? said`${ratio.toPrecision(3)} times ${other!.at}`
      : inWords('seen here alone');
    if (ratio >= clearly) return [meets({ ...facts, found })];
    if (ratio <= 1 / clearly) return [fails({ ...facts, found }, exchanged(other!.at))];
    return [
      cannotTell({ ...facts, found, because: 'Two channels react alike.' }, [
        'taps closer to the transducer, and farther from the other',
      ]),
    ];
  },
});

/** The point beside which it was tapped. */
export function placeOf(record: MeasuredRecord): string {
  const { occasion } = record;
  return occasion.kind === 'taps' ? (valueIfStated(occasion.sheet.values.at) ?? record.at) : record.at;
}

function together(record: MeasuredRecord, others: readonly MeasuredRecord[]): readonly MeasuredRecord[] {
  return others.filter((each) => each.recording === record.recording && each.at !== record.at);
}

function strongest(records: readonly MeasuredRecord[]): MeasuredRecord | undefined {
  const seen = records.filter((each) => largestTap(each) > 0);
  return seen.reduce<MeasuredRecord | undefined>(
    (most, each) => (most === undefined || largestTap(each) > largestTap(most) ? each : most),
    undefined,
  );
}

/** In volts where the scale is known, in numbers of the record otherwise; zero where no tap stands out. */
function largestTap(record: MeasuredRecord): number {
  const { taps } = record.measures;
  if (!taps.known) return 0;
  const scale = voltsPerNumber(record);
  const peak = taps.value.taps.reduce((most, each) => Math.max(most, each.peak), 0);
  return peak * (scale.known ? Math.abs(scale.value) : 1);
}

function exchanged(other: string) {
  return [
    {
      cause: said`exchanged with ${other}: two cables, terminals or channel names`,
      evidence: said`a tap here shows there`,
      next: 'Tap beside the other point: if it shows here, they are exchanged.',
    },
    {
      cause: 'the transducer here is loose, dead or not connected',
      evidence: 'a tap beside it hardly shows',
      next: 'Check bias and torque.',
    },
  ];
}
