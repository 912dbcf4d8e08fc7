import { measured, measuredSpan, type Said, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { iepePractice } from '../../source/iepe-practice.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { chainOf, restAtInput } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, type RivalCause, wants } from './check-kind.ts';

/** Error of a direct-voltage reading of a recorder, k = 2: of the reading, and of its zero in volts. */
export const readingError = { share: 0.01, zero: 0.05 } as const;

interface Seen {
  readonly volts: number;
  readonly supply: number | undefined;
}

/** What a wrong rest voltage may come from, by where it lies. Several may fit; each has its own next test. */
const causes: readonly { readonly fits: (seen: Seen) => boolean; readonly cause: Said; readonly next: Said }[] = [
  {
    fits: ({ volts }) => Math.abs(volts) < 1.5,
    cause: 'short between signal and return: cable, connector or junction box',
    next: 'Unplug the transducer: the voltage goes to that of the supply where the cable is good.',
  },
  {
    fits: ({ volts }) => Math.abs(volts) < 1.5,
    cause: 'the supply current is off, or the record is not direct-coupled',
    next: 'Measure at the terminal with a hand meter, and read the coupling of the input.',
  },
  {
    fits: ({ volts, supply }) => supply !== undefined && volts > 0.9 * supply,
    cause: 'open circuit: broken core, loose terminal, or cores exchanged',
    next: 'Bridge the pair at the transducer: the voltage goes to nearly zero where the cable is good.',
  },
  {
    fits: ({ volts }) => volts >= 1.5 && volts < 8,
    cause: 'leakage from water in the connector, or a transducer that is too hot or damaged by a fall',
    next: 'Disconnect and dry the connector; put a known good transducer in its place.',
  },
  {
    fits: ({ volts }) => volts >= 1.5 && volts < 8,
    cause: 'another kind of transducer than designed, or too little supply current',
    next: 'Read the label against the instrument list; measure the current in series.',
  },
  {
    fits: ({ volts, supply }) => volts >= 8 && (supply === undefined || volts <= 0.9 * supply),
    cause: 'more resistance in the line than designed, or a transducer with a higher bias',
    next: 'Measure the voltage at the transducer itself: the difference over the current is the resistance.',
  },
  {
    fits: ({ volts }) => volts < -1.5,
    cause: 'cores exchanged on the way',
    next: 'Follow polarity from terminal to terminal.',
  },
];

/** The rest voltage of a constant-current chain at the input, against the bias of the pieces and the drop of the line. */
export const bias = checkKind({
  kind: 'bias',
  title: 'Bias voltage',
  question: 'Is the transducer powered, connected and intact?',
  on: ['at-rest', 'stopped', 'power-on', 'taps'],
  applies: (designed) => chainOf(designed)?.transducer.biased !== undefined,
  sources: [
    clause(iepePractice, 'bias voltage'),
    clause(tradePractice, 'where a wrong bias comes from; 1 % and 50 mV of a recorder'),
  ],
  judge: ({ designed, record }): readonly Judged[] => {
    const { coupling } = record.statement;
    if (coupling.known && coupling.value === 'alternating') {
      return record.occasion.kind === 'at-rest'
        ? [
            cannotTell({ because: 'The record is AC-coupled: its mean says nothing of the bias.' }, [
              'a direct-coupled record, or a hand meter at the terminal',
            ]),
          ]
        : [];
    }
    const { course, moments } = record.measures;
    const known = fromAll(
      { coupling, expected: restAtInput(designed)!, scale: voltsPerNumber(record), moments },
      (each) => each,
    );
    if (!known.known) return wants(known.missing);
    const { expected, scale } = known.value;
    // What the chain shows once settled: the last tenth of a record that begins with the supply coming on.
    const numbers = record.occasion.kind === 'power-on' ? lastTenth(course.means) : known.value.moments.mean;
    const volts = numbers * scale;
    const reach = readingError.zero + readingError.share * Math.abs(volts);
    const facts = {
      expected: measuredSpan('voltage', expected),
      tolerance: said`${measured('voltage', reach)}, the error of the recorder`,
      found: measured('voltage', volts, 3),
      because: 'The rest voltage stands over bias and line drop of a transducer that is powered and whole.',
    };
    if (volts >= expected.low - reach && volts <= expected.high + reach) return [meets(facts)];
    const supply = highestSupply(designed);
    return [fails(facts, causesOf({ volts, supply }, facts.found))];
  },
});

function lastTenth(means: Float64Array): number {
  const tail = means.slice(Math.floor(means.length * 0.9)).filter(Number.isFinite);
  return tail.reduce((sum, each) => sum + each, 0) / tail.length;
}

function highestSupply(designed: Parameters<typeof restAtInput>[0]): number | undefined {
  const compliance = chainOf(designed)?.fedBy?.compliance;
  return compliance?.known === true ? compliance.value : undefined;
}

function causesOf(seen: Seen, found: Said): readonly RivalCause[] {
  return causes
    .filter((each) => each.fits(seen))
    .map(({ cause, next }) => ({ cause, evidence: said`${found} at the input`, next }));
}
