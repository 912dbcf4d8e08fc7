import { measuredLevel, said } from '../../finding/measure.ts';
import { type Level, type Motion, meaningFor, type Stated, splitAtDetector } from '../../quantity/index.ts';
import { conversionNotes } from '../../source/conversion-notes.ts';
import { clause } from '../../source/source.ts';
import { examplePoint } from './example.ts';
import { demandRule, type StatedPoint } from './rule.ts';

export const oneUnit = demandRule<StatedPoint>({
  id: 'demand/one-unit',
  title: 'Both levels of a target are of one family of units',
  prose:
    'g beside m/s², or mm/s beside in/s, within one target: whoever wrote it had one unit in mind. Prefixes may differ.',
  sources: [clause(conversionNotes)],
  finds: ({ statement, point }) =>
    statement.targets.flatMap(({ name, smallest, largest }) => {
      const [low, high] = [unitOf(smallest), unitOf(largest)];
      if (low === undefined || high === undefined || !smallest.known || !largest.known) return [];
      // Prefixes of one unit differ by a power of ten.
      const decades = Math.log10(low.factor / high.factor);
      if (Math.abs(decades - Math.round(decades)) < 1e-6) return [];
      return [
        {
          weight: 'question',
          at: `${point.of}/${name}`,
          found: `${smallest.written} beside ${largest.written}`,
          limit: `both in ${low.text}, or both in ${high.text}`,
          because: said`They are read as ${measuredLevel(smallest.value)} and ${measuredLevel(largest.value)}; one may be ${Math.max(low.factor, high.factor) / Math.min(low.factor, high.factor)} times off.`,
          remedy: ['write both in one unit'],
          asks: `Is '${largest.written}' in ${high.text} on purpose, beside '${smallest.written}'?`,
        },
      ];
    }),
  valid: examplePoint({ smallest: '100 um/s rms' }),
  invalid: examplePoint({ largest: '0.5 in/s rms' }),
});

/** The unit somebody wrote: what stands between the number and the detector. */
function unitOf(stated: Stated<Level<Motion>>): { readonly text: string; readonly factor: number } | undefined {
  if (!stated.known) return undefined;
  const text = splitAtDetector(stated.written.replace(/^[\s\d.,eE+\-\u2212]+/, '')).before.trim();
  const factor = text === '' ? undefined : meaningFor(text, stated.value.quantity)?.factor;
  return factor === undefined ? undefined : { text, factor };
}
