import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { examplePoint } from './example.ts';
import { demandRule, type StatedPoint } from './rule.ts';

/** Impacts ring the structure above about here. Common practice, no source. */
const leastUpperEnd = 1000;

export const burstBand = demandRule<StatedPoint>({
  id: 'demand/burst-band',
  title: 'Bursts are looked for where a structure rings',
  prose:
    'An impact in a bearing rings its surroundings at kilohertz. A band that ends among the orders of the shaft holds no bursts; usually Hz was typed for kHz.',
  sources: [clause(tradePractice, 'envelope bands')],
  finds: ({ statement, point }) =>
    statement.targets.flatMap(({ name, observe, band }) => {
      if (!observe.scansBand || band?.known !== true || band.value.high >= leastUpperEnd) return [];
      return [
        {
          weight: 'question',
          at: `${point.of}/${name}`,
          found: said`bursts in ${measuredSpan('frequency', band.value)}`,
          limit: measured('frequency', leastUpperEnd),
          because: 'Every chain passes there, and none of them would show the first damage.',
          remedy: ['write kHz if kHz was meant', 'look for a line or an overall value instead'],
          asks: `Is the band '${band.written}' in Hz, or was kHz meant?`,
        },
      ];
    }),
  valid: examplePoint({ observe: 'burst' }),
  invalid: examplePoint({ observe: 'burst', band: '2..10 Hz' }),
});
