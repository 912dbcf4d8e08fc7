import { measuredLevel } from '../../finding/measure.ts';
import { asSineDetector } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { examplePoint } from './example.ts';
import { demandRule, type StatedPoint } from './rule.ts';

export const levelsInOrder = demandRule<StatedPoint>({
  id: 'demand/levels-in-order',
  title: 'The smallest level lies below the largest',
  prose:
    'What must be seen is smaller than what must be survived. The other way round, two values were exchanged or one of them was typed in another unit.',
  sources: [clause(tradePractice, 'detection targets')],
  finds: ({ statement, point }) =>
    statement.targets.flatMap(({ name, smallest, largest, observe }) => {
      if (!smallest.known || !largest.known || observe.atRest) return [];
      const [low, high] = [smallest.value, largest.value];
      // As sines, so that a peak may stand beside an rms value; the rule on detectors speaks of that.
      if (low.quantity !== high.quantity || asSineDetector(low, high.detector).value < high.value) return [];
      return [
        {
          weight: 'question',
          at: `${point.of}/${name}`,
          found: `a smallest level of ${smallest.written}`,
          limit: measuredLevel(high),
          because: 'A chain judged against it would be asked to see only what it need not survive.',
          remedy: ['exchange the two', 'check the unit of each'],
          asks: `Are ${smallest.written} and ${largest.written} exchanged, or is one of the units wrong?`,
        },
      ];
    }),
  valid: examplePoint(),
  invalid: examplePoint({ smallest: '0.1 m/s rms' }),
});
