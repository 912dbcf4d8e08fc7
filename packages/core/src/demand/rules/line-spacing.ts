import { measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { samplingPractice } from '../../source/sampling-practice.ts';
import { clause } from '../../source/source.ts';
import { examplePoint } from './example.ts';
import { demandRule, type StatedPoint } from './rule.ts';

/** A Hann window spreads a line over three: a line nearer than this to zero is not one. */
const linesFromZero = 3;

export const lineSpacing = demandRule<StatedPoint>({
  id: 'demand/line-spacing',
  title: 'The line spacing is fine enough for the line looked for',
  prose:
    'A line lower than three line spacings is not told from the constant part of the record. A spacing in kHz typed for Hz makes every line invisible, and the noise of it looks small beside nothing.',
  sources: [clause(samplingPractice, 'lines and window')],
  finds: ({ point }) =>
    point.targets.flatMap((target) => {
      if (target.observable.kind !== 'line') return [];
      const known = fromAll({ at: target.band, spacing: target.resolution }, (values) => values);
      if (!known.known) return [];
      const { at, spacing } = known.value;
      const widest = at.low / linesFromZero;
      if (spacing > 0 && spacing <= widest) return [];
      return [
        {
          weight: 'question',
          at: `${point.of}/${target.name}`,
          found: said`a line spacing of ${measured('frequency', spacing)} for a line at ${measured('frequency', at.low)}`,
          limit: measured('frequency', widest),
          because: 'The line cannot be told from its neighbours or from the constant part.',
          remedy: ['a finer line spacing, which is a longer record', 'check whether Hz or kHz was meant'],
          asks: said`Is the spacing of the lines really ${measured('frequency', spacing)}?`,
        },
      ];
    }),
  valid: examplePoint(),
  invalid: examplePoint({ resolution: '0.3125 kHz' }),
});
