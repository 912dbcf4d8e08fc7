import type { DesignedPoint } from '../../design/design.ts';
import { measured, measuredLevel, said } from '../../finding/measure.ts';
import { asMotion, asSineDetector, fromAll, type Level, level, type Motion } from '../../quantity/index.ts';
import { measured as gathered } from '../../signal/measures/gathering.ts';
import { toneAt } from '../../signal/measures/tone.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { chainOf, gainAt, sensitivityAtInput } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, type RivalCause, wants } from './check-kind.ts';

const mains = [50, 60] as const;
const multiples = [1, 2, 3] as const;
/** Hum hides nothing where it stays this far below what must be seen: 10 dB. */
const below = 10 ** (-10 / 20);
/** Two mains frequencies and their neighbours are told apart in this many seconds. */
const shortest = 2;
/** A tone that is no higher than this many of its standard errors is not there. */
const sure = 4;

/** Lines that stand exactly at the mains and its multiples while nothing turns. */
export const mainsHum = checkKind({
  kind: 'mains-hum',
  title: 'Mains hum',
  question: 'Does the wiring bring in the mains, so that it hides what must be seen?',
  on: ['stopped'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  sources: [clause(tradePractice, 'hum 10 dB below the smallest target; a line that stays when the shaft stops')],
  judge: ({ designed, record }): readonly Judged[] => {
    const { rate, excerpt } = record.measures;
    const known = fromAll(
      { rate, scale: voltsPerNumber(record), sensitivity: sensitivityAtInput(designed), gain: gainAt(designed) },
      (each) => each,
    );
    if (!known.known) return wants(known.missing);
    const { scale, sensitivity, gain } = known.value;
    const seconds = excerpt.length / known.value.rate;
    if (seconds < shortest) {
      return [
        cannotTell({ because: said`In ${measured('time', seconds)} the mains cannot be told from what is near it.` }, [
          said`${measured('time', shortest)} or more with the machine stopped`,
        ]),
      ];
    }
    const senses = chainOf(designed)!.transducer.senses;
    const lines = mains
      .flatMap((base) => multiples.map((times) => base * times))
      .filter((frequency) => frequency < 0.4 * known.value.rate)
      .flatMap((frequency) => {
        const tone = gathered(toneAt(frequency, known.value.rate), excerpt);
        if (!tone.known) return [];
        const { amplitude, amplitudeError } = tone.value;
        const there = amplitude > sure * amplitudeError;
        const found = level(senses, (amplitude * Math.abs(scale)) / sensitivity / gain(frequency), 'peak');
        return [{ frequency, there, found, limit: limitAt(designed, senses, frequency) }];
      });
    const worst = lines
      .filter((each) => each.there && each.limit !== undefined && each.found.value > each.limit.value)
      .sort((a, b) => b.found.value / b.limit!.value - a.found.value / a.limit!.value);
    const limits = lines.flatMap(({ limit }) => (limit === undefined ? [] : [limit]));
    const strictest = limits.reduce<Level<Motion> | undefined>(
      (least, each) => (least === undefined || each.value < least.value ? each : least),
      undefined,
    );
    const facts = {
      expected: strictest === undefined ? 'no target near the mains' : said`below ${measuredLevel(strictest)}`,
      tolerance: '10 dB under the smallest level that must be seen there',
      because: 'What stands exactly on the mains while the shaft stands still comes through the wiring.',
    };
    if (worst.length === 0) {
      const most = lines.filter((each) => each.there).sort((a, b) => b.found.value - a.found.value)[0];
      const found =
        most === undefined
          ? 'nothing stands out at the mains or its multiples'
          : said`${measuredLevel(most.found)} at ${measured('frequency', most.frequency)}`;
      return [meets({ ...facts, found })];
    }
    const [first] = worst;
    const found = said`${measuredLevel(first!.found)} at ${measured('frequency', first!.frequency)}`;
    return [
      fails({ ...facts, expected: said`below ${measuredLevel(first!.limit!)}`, found }, causesFor(first!.frequency)),
    ];
  },
});

/** The smallest level a target must show at this frequency, as a peak of the sensed motion, less 10 dB. */
function limitAt({ point }: DesignedPoint, senses: Motion, frequency: number): Level<Motion> | undefined {
  const least = point.targets.flatMap((target) => {
    if (!target.smallest.known || !touches(target, frequency)) return [];
    return [asMotion(asSineDetector(target.smallest.value, 'peak'), senses, frequency).value];
  });
  return least.length === 0 ? undefined : level(senses, below * Math.min(...least), 'peak');
}

/** A line within a tenth of the frequency, or a band that holds it. */
function touches(target: DesignedPoint['point']['targets'][number], frequency: number): boolean {
  if (target.observable.kind === 'line') {
    return target.frequencies.known && target.frequencies.value.some((each) => Math.abs(each / frequency - 1) < 0.1);
  }
  return target.band.known && frequency >= target.band.value.low && frequency <= target.band.value.high;
}

function causesFor(frequency: number): readonly RivalCause[] {
  const evidence = said`a line exactly at ${measured('frequency', frequency)} with the machine stopped`;
  return [
    {
      cause: 'ground loop: the screen or the signal return is earthed at two places',
      evidence,
      next: 'Lift one end of the screen, then isolate the case, and see whether the line falls.',
    },
    {
      cause: 'the cable runs beside a power cable',
      evidence,
      next: 'Move a length of it by a metre and see whether the line changes.',
    },
    ...(frequency % 100 === 0 || frequency % 120 === 0
      ? [
          {
            cause: 'real motion: a transformer or a stopped motor that is still fed hums at twice the mains',
            evidence: 'twice the mains, as magnetic forces are',
            next: 'Touch the transducer on a soft pad: what stays is electrical.',
          },
        ]
      : []),
  ];
}
