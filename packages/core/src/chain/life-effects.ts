import type { Exposure } from '../demand/surroundings.ts';
import { type Answer, answer, type Sheet, type Stated, valueIfStated } from '../quantity/index.ts';
import { type Clause, clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import type { MeasuringChain } from './chain.ts';
import type { Sealing } from './sealing.ts';

/** What surroundings do to the life of a part: a range, never a number, with how it is known. */
export interface LifeEffect {
  readonly name: string;
  readonly part: string;
  readonly cause: string;
  /** How it shows before it fails. */
  readonly shows: string;
  /** Seconds until it shows; absent where nobody gives a range. */
  readonly life?: { readonly low: number; readonly high: number };
  readonly sources: readonly Clause[];
  /** Whether it is to be feared here, or that it cannot be told. */
  applies(chain: MeasuringChain, exposure: Exposure | undefined): Answer<boolean>;
}

const month = (365.25 * 86400) / 12;

function sealingOfTransducer({ parts }: MeasuringChain): Answer<Sealing> {
  const { sheet } = parts.transducer;
  const sealing = valueIfStated((sheet as Sheet).values.sealing as Stated<Sealing> | undefined);
  return sealing === undefined ? { known: false, missing: [{ of: sheet.of, what: 'sealing' }] } : answer(sealing);
}

const wet = (exposure: Exposure | undefined) => exposure === 'washed down' || exposure === 'immersed';

/** Effects the trade speaks of. There is no source for any of the ranges: each is a judgement of practice. */
export const lifeEffects: readonly LifeEffect[] = [
  {
    name: 'mated-connector-in-the-wet',
    part: 'mated connector',
    cause: 'it breathes: each time it cools it draws in water',
    shows: 'the bias creeps for weeks before the signal fails',
    life: { low: 3 * month, high: 18 * month },
    sources: [clause(tradePractice, 'a mated connector in a fog leaks in 3 to 18 months')],
    applies: (chain, exposure) => {
      const sealing = sealingOfTransducer(chain);
      if (!wet(exposure)) return answer(false);
      return sealing.known ? answer(sealing.value.state === 'mated') : sealing;
    },
  },
  {
    name: 'seal-of-unknown-state-in-the-wet',
    part: 'cable entry',
    cause: 'an IP code was earned by a test of minutes, as new',
    shows: 'falling insulation resistance, a bias that moves with the weather',
    sources: [clause(tradePractice, 'sealing as the test found it')],
    applies: (chain, exposure) => {
      const sealing = sealingOfTransducer(chain);
      if (!wet(exposure)) return answer(false);
      return sealing.known ? answer(sealing.value.state === 'not said') : sealing;
    },
  },
];

/** Effects to be feared for a chain where it gets so wet; what cannot be told is left to the rule of the sealing. */
export function feared(chain: MeasuringChain, exposure: Exposure | undefined): readonly LifeEffect[] {
  return lifeEffects.filter((each) => {
    const applies = each.applies(chain, exposure);
    return applies.known && applies.value;
  });
}

/** Range of life in months, as it may be printed: `3 to 18 months (common practice, no source)`. */
export function showLife({ life, sources }: LifeEffect): string {
  const how = sources.map(({ source, how: place }) => place ?? source.how).join(', ');
  if (life === undefined) return `no range is known (${how})`;
  return `${Math.round(life.low / month)} to ${Math.round(life.high / month)} months (${how})`;
}
