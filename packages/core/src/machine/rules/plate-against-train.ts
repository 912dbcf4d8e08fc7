import { measured, measuredChange, measuredSpan, said } from '../../finding/measure.ts';
import { si } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { speedRange } from '../speed-range.ts';
import { gearTrain } from './example-trains.ts';
import { hertzRatio } from './hertz-for-revolutions.ts';
import { trainRule } from './train-rule.ts';

/** How far a plate may lie from the train. Common practice, no source. */
const agreement = 0.005;

export const plateAgainstTrain = trainRule({
  id: 'machine/plate-against-train',
  title: 'A speed on a plate is one the train can give',
  prose:
    'A plate speed outside what the train gives, by more than half a per cent, says that a ratio is wrong or a belt or gear is missing from the train.',
  sources: [clause(tradePractice, 'speed within 0.5 % of the stated')],
  finds: (solved) =>
    (solved.train.plates ?? []).flatMap(({ shaft, speed }) => {
      const range = speedRange(solved, shaft);
      if (range === undefined || !speed.known || hertzRatio(speed.value, range) !== undefined) return [];
      const { low, high } = range;
      if (speed.value >= low * (1 - agreement) && speed.value <= high * (1 + agreement)) return [];
      const nearest = speed.value < low ? low : high;
      return [
        {
          weight: 'question',
          at: `${solved.train.of}/${shaft}`,
          found: said`a plate speed of ${measured('shaft speed', speed.value)}`,
          limit: said`${measuredSpan('shaft speed', { low: si('shaft speed', low), high: si('shaft speed', high) })} from the train, ${measuredChange(speed.value / nearest - 1)} away`,
          because: 'Either the plate or a ratio of the train is wrong, and with it every line of this shaft.',
          remedy: ['measure the speed', 'look for a gear, belt or coupling that is not in the train'],
          asks: 'Which is right, the plate or the train?',
        },
      ];
    }),
  valid: gearTrain({}, { machine: '442 r/min' }),
  invalid: gearTrain({}, { machine: '470 r/min' }),
});
