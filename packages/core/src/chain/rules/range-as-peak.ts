import { inWords, measuredLevel, said } from '../../finding/measure.ts';
import { asSineDetector, type Level, type Stated, words } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { rule } from './rule.ts';

export const rangeAsPeak = rule({
  id: 'chain/range-as-peak',
  title: 'What a part bears is stated as peak',
  prose:
    'Electronics clip at a peak, whatever the waveform. A range in rms or peak-to-peak, taken as peak, is wrong by a ' +
    'factor of 1.41 or 2 for a sine and by an unknown one for knocks.',
  remedy: ['read in the data sheet which detector its range is of', 'ask the maker for the range as peak'],
  sources: [clause(tradePractice, 'range in g rms')],
  judge: ({ prediction }) => {
    const { transducer } = prediction.chain.parts;
    const sendsItsRange = prediction.chain.transducer.signal === 'overall';
    return Object.entries(transducer.sheet.values as Readonly<Record<string, Stated<unknown> | undefined>>).flatMap(
      ([name, stated]) => {
        if (stated?.known !== true || !isLevel(stated.value) || stated.value.detector === 'peak') return [];
        // The range of a sensor that detects inside is of its own detector, and that is what it sends.
        if (sendsItsRange && name === 'range') return [];
        return [
          {
            rule: 'chain/range-as-peak',
            outcome: 'cannot tell' as const,
            what: `${words(name)} of ${transducer.name}`,
            found: measuredLevel(stated.value),
            limit: inWords('a peak level'),
            missing: [{ of: transducer.sheet.of, what: `${words(name)} as peak` }],
            needs: said`the ${words(name)} as peak; of a sine it would be ${measuredLevel(asSineDetector(stated.value, 'peak'))}`,
          },
        ];
      },
    );
  },
});

function isLevel(value: unknown): value is Level {
  return typeof value === 'object' && value !== null && 'detector' in value && 'quantity' in value;
}
