import { measuredLevel, said } from '../../finding/measure.ts';
import type { Found } from '../../finding/rule-text.ts';
import { asSineDetector, level } from '../../quantity/index.ts';
import { conversionNotes } from '../../source/conversion-notes.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { zoneTables } from '../zones/tables/tables.ts';
import { exampleLimits } from './example.ts';
import { demandRule, type StatedLimits } from './rule.ts';

/** How far beyond every table known here a limit of a housing may lie before it is asked about. Common practice, no source. */
const factor = 2;

export const boundariesUsual = demandRule<StatedLimits>({
  id: 'demand/boundaries-usual',
  title: 'A limit of velocity is of the order of limits',
  prose:
    'A limit of twice the largest of any table known here, or less than half the smallest, was probably typed in another unit: 5.1 in/s is 130 mm/s.',
  sources: [clause(conversionNotes), clause(tradePractice, 'mm/s against in/s')],
  finds: (limits) =>
    (
      [
        ['A/B', limits.aB],
        ['B/C', limits.bC],
        ['C/D', limits.cD],
      ] as const
    ).flatMap(([name, stated]): readonly Found[] => {
      if (!stated.known || stated.value.quantity !== 'velocity') return [];
      const rms = asSineDetector(stated.value, 'rms');
      const known = zoneTables
        .flatMap(({ boundaries: { ab, bc, cd } }) => [ab, bc, cd])
        .filter(({ quantity, detector }) => quantity === 'velocity' && detector === 'rms')
        .map((each) => each.value);
      const [least, most] = [Math.min(...known) / factor, Math.max(...known) * factor];
      if (rms.value >= least && rms.value <= most) return [];
      const limit = rms.value > most ? most : least;
      return [
        {
          weight: 'question',
          at: `${limits.at}/limits`,
          found: said`${name} '${stated.written}', which is ${measuredLevel(stated.value)}`,
          limit: measuredLevel(level('velocity', limit, 'rms')),
          because: 'No table known here has a limit of that order; alert and trip follow from it.',
          remedy: ['check the unit against the specification'],
          asks: otherReading(stated.written),
        },
      ];
    }),
  valid: exampleLimits('3.2 mm/s rms', '5.1 mm/s rms', '8.5 mm/s rms'),
  invalid: exampleLimits('3.2 mm/s rms', '5.1 in/s rms', '8.5 mm/s rms'),
});

/** The same number in the other unit of the trade, where one of the two was written. */
function otherReading(written: string): string {
  if (written.includes('in/s')) return `Was '${written.replace('in/s', 'mm/s')}' meant?`;
  if (written.includes('mm/s')) return `Was '${written.replace('mm/s', 'in/s')}' meant?`;
  return `In which unit does the specification give '${written}'?`;
}
