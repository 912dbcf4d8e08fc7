import type { DesignedPoint } from '../../design/design.ts';
import { measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import type { Rail, ValuesHistogram } from '../../signal/measures/values-histogram.ts';
import { iepePractice } from '../../source/iepe-practice.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { chainOf, predictionOf } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, type RivalCause, wants } from './check-kind.ts';

/** A top is flat where the record rests on its extreme this long and this often. */
const flat = { longest: 3, rests: 3, mean: 2.5 } as const;
/** Near a ceiling: from this share of it on. */
const near = 0.9;
/**
 * Samples crowd at an extreme: so many of them and this share in its last hundredth of the span, this many times the
 * hundredth before. Of noise the last hundredth holds one or two; of a sine 2.4 times as many as the one before.
 */
const crowded = { samples: 20, share: 0.0003, times: 5 } as const;

/** Whether tops are cut: flat at an extreme, or as high as a ceiling of the chain lets them be. */
export const clipping = checkKind({
  kind: 'clipping',
  title: 'Clipping',
  question: 'Did the signal fit through the chain, on both sides?',
  on: ['running', 'taps', 'calibrator', 'beside-reference'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  sources: [
    clause(iepePractice, 'swing between saturation and supply'),
    clause(tradePractice, 'flat tops: three samples and more on one value, again and again'),
  ],
  judge: ({ designed, record }): readonly Judged[] => {
    const known = fromAll({ values: record.measures.values, moments: record.measures.moments }, (each) => each);
    if (!known.known) return wants(known.missing);
    const { values, moments } = known.value;
    const crowd = marks(designed) ? { upper: false, lower: false } : crowds(values);
    const rails = {
      upper: cut(values.highRail, values) || crowd.upper,
      lower: cut(values.lowRail, values) || crowd.lower,
    };
    const scale = voltsPerNumber(record);
    const ceilings = ceilingsOf(designed);
    const facts = {
      expected: 'no top cut',
      tolerance: 'none',
      because: 'What is cut is lost and puts lines into the spectrum that the machine does not have.',
    };
    if (rails.upper || rails.lower) {
      const sides = rails.upper && rails.lower ? 'both sides' : rails.upper ? 'the upper side' : 'the lower side';
      const rail = rails.upper ? values.highRail : values.lowRail;
      const found = cut(rail, values)
        ? said`flat on ${sides}: up to ${rail.longestRest} samples on one value, ${rail.rests} times`
        : said`samples crowd at the end of ${sides}, more than ${crowded.times} times as many as just before it`;
      return [fails({ ...facts, found }, rails.upper && rails.lower ? bothSides(found) : oneSide(found))];
    }
    if (!scale.known) {
      return [
        cannotTell(
          {
            ...facts,
            found: 'no flat top',
            because: 'Behind a filter a cut top is round again; how near a ceiling it came needs the scale.',
          },
          ['unit, gain or sensitivity of the channel'],
        ),
      ];
    }
    const peak = moments.peak * Math.abs(scale.value);
    const reached = ceilings.find((each) => peak > near * each.volts);
    if (reached !== undefined) {
      const found = said`a peak of ${measured('voltage', peak)}, where ${reached.name} ends at ${measured('voltage', reached.volts)}`;
      return [
        cannotTell(
          { ...facts, found, because: 'So near a ceiling, behind a filter, a cut top and a whole one look alike.' },
          ['the same in a range twice as large, or with a transducer a tenth as sensitive'],
        ),
      ];
    }
    const lowest = ceilings.reduce((least, each) => Math.min(least, each.volts), Number.POSITIVE_INFINITY);
    return [
      meets({
        ...facts,
        found: Number.isFinite(lowest)
          ? said`a peak of ${measured('voltage', peak)} under a ceiling at ${measured('voltage', lowest)}, no flat top`
          : said`a peak of ${measured('voltage', peak)}, no flat top`,
      }),
    ];
  },
});

function coarse({ step, greatest, least }: ValuesHistogram): boolean {
  return step.known && (greatest - least) / step.value.step < 64;
}

/** Resting on an extreme; a few values of a coarse converter rest on every value, and say nothing. */
function cut(rail: Rail, values: ValuesHistogram): boolean {
  return !coarse(values) && rail.longestRest >= flat.longest && rail.rests >= flat.rests && rail.meanRest >= flat.mean;
}

/** A probe that looks at the mark of each turn rests on one value between two marks. */
function marks({ stated }: DesignedPoint): boolean {
  return stated.probes?.some((each) => each.kind === 'once-per-turn') === true;
}

/** At which ends of the span samples crowd, as behind noise or a filter at the end of a swing; never of a coarse converter. */
function crowds(values: ValuesHistogram): { readonly upper: boolean; readonly lower: boolean } {
  const { cells, least, greatest, samples } = values;
  if (coarse(values)) return { upper: false, lower: false };
  const hundredth = (greatest - least) / 100;
  const between = (low: number, high: number) =>
    cells.counts.reduce((sum, count, cell) => {
      const middle = cells.from + (cell + 0.5) * cells.width;
      return middle > low && middle <= high ? sum + count : sum;
    }, 0);
  const many = (last: number, before: number) =>
    last >= crowded.samples && last > crowded.share * samples && last > crowded.times * before;
  return {
    upper: many(
      between(greatest - hundredth, greatest + cells.width),
      between(greatest - 2 * hundredth, greatest - hundredth),
    ),
    lower: many(between(least - cells.width, least + hundredth), between(least + hundredth, least + 2 * hundredth)),
  };
}

/** Ceilings that stand in volts at the input, the lowest first: swing of the electronics, range of the converter. */
function ceilingsOf(designed: DesignedPoint): readonly { readonly name: string; readonly volts: number }[] {
  const predicted = predictionOf(designed);
  const sensitivity = predicted?.chain.sensitivity;
  if (predicted === undefined || sensitivity?.known !== true) return [];
  return predicted.ceilings
    .flatMap((each) =>
      each.known && each.value.motion === predicted.chain.transducer.senses
        ? [{ name: each.value.name, volts: each.value.peak * sensitivity.value }]
        : [],
    )
    .sort((a, b) => a.volts - b.volts);
}

const bothSides = (evidence: Judged['found']): readonly RivalCause[] => [
  {
    cause: 'the range of the input is too small',
    evidence,
    next: 'Read the range set at the recorder; take the next one up.',
  },
  {
    cause: 'the transducer is too sensitive for what happens here',
    evidence,
    next: 'Record with a transducer a tenth as sensitive, or behind a mechanical filter.',
  },
  {
    cause: 'the mounted resonance is struck and lifts the peaks',
    evidence,
    next: 'Record at the highest sampling rate and look at the resonance.',
  },
];

const oneSide = (evidence: Judged['found']): readonly RivalCause[] => [
  {
    cause: 'the bias stands off its middle: leakage, heat, or a barrier that takes too much voltage',
    evidence,
    next: 'Measure the direct voltage at the input.',
  },
  {
    cause: 'the supply is too low for the line resistance',
    evidence,
    next: 'Measure the supply under load.',
  },
  {
    cause: 'shocks that go one way only',
    evidence,
    next: 'Record with a range ten times as large and compare.',
  },
];
