import { inWords } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { exampleLimits } from './example.ts';
import { demandRule, type StatedLimits } from './rule.ts';

export const boundariesRise = demandRule<StatedLimits>({
  id: 'demand/boundaries-rise',
  title: 'Boundaries of zones rise from A/B over B/C to C/D',
  prose:
    'A boundary at or above the next one leaves a zone without width: two rows of the specification were exchanged.',
  sources: [clause(tradePractice, 'order of set points')],
  finds: ({ at, aB, bC, cD }) => {
    const rows = [
      ['A/B', aB, 'B/C', bC],
      ['B/C', bC, 'C/D', cD],
    ] as const;
    return rows.flatMap(([low, lower, high, upper]) => {
      if (!lower.known || !upper.known || lower.value.quantity !== upper.value.quantity) return [];
      if (lower.value.detector !== upper.value.detector || lower.value.value < upper.value.value) return [];
      return [
        {
          weight: 'question',
          at: `${at}/limits`,
          found: `${low} at ${lower.written}, ${high} at ${upper.written}`,
          limit: inWords(`${low} below ${high}`),
          because: 'Alert and trip follow from these boundaries.',
          remedy: ['exchange the two', 'read the specification again', 'check the unit of each'],
          asks: `Are ${low} (${lower.written}) and ${high} (${upper.written}) exchanged?`,
        },
      ];
    });
  },
  valid: exampleLimits('3.2 mm/s rms', '5.1 mm/s rms', '8.5 mm/s rms'),
  invalid: exampleLimits('3.2 mm/s rms', '9.1 mm/s rms', '8.5 mm/s rms'),
});
