import { inWords } from '../../finding/measure.ts';
import type { Found } from '../../finding/rule-text.ts';
import { type Level, type Motion, type Stated, shortDetector, showBand } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { exampleLimits } from './example.ts';
import { demandRule, type StatedLimits } from './rule.ts';

export const boundariesAlike = demandRule<StatedLimits>({
  id: 'demand/boundaries-alike',
  title: 'Boundaries of zones are of one motion, one detector and one stated band',
  prose:
    'An rms value of 2 to 1000 Hz and one of 10 to 1000 Hz are two numbers; an rms value of no stated band is none. On a slow machine the difference is the whole of 1×.',
  sources: [clause(tradePractice, 'rms of which band')],
  finds: (limits) => [...unlike(limits), ...withoutBand(limits)],
  valid: exampleLimits('3.2 mm/s rms 2-1000 Hz', '5.1 mm/s rms 2-1000 Hz', '8.5 mm/s rms 2-1000 Hz'),
  invalid: exampleLimits('3.2 mm/s rms 2-1000 Hz', '5.1 mm/s rms', '8.5 mm/s rms 10-1000 Hz'),
});

type Known = Extract<Stated<Level<Motion>>, { readonly known: true }>;

function knownRows({ aB, bC, cD }: StatedLimits): readonly (readonly [string, Known])[] {
  const rows = [
    ['A/B', aB],
    ['B/C', bC],
    ['C/D', cD],
  ] as const;
  return rows.flatMap(([name, row]) => (row.known ? [[name, row] as const] : []));
}

/** What the levels are of, the band only where it is stated. */
function sortOf({ value }: Known): readonly string[] {
  return [value.quantity, shortDetector[value.detector], ...(value.band === undefined ? [] : [showBand(value.band)])];
}

function unlike(limits: StatedLimits): readonly Found[] {
  const rows = knownRows(limits);
  const differs = (index: number) => new Set(rows.map(([, row]) => sortOf(row)[index]).filter(Boolean)).size > 1;
  if (![0, 1, 2].some(differs)) return [];
  return [
    {
      weight: 'question',
      at: `${limits.at}/limits`,
      found: rows.map(([name, row]) => `${name} ${row.written}`).join(', '),
      limit: inWords('one motion, one detector, one band'),
      because: 'Their differences would be numbers without meaning.',
      remedy: ['state all boundaries as the specification does, in one motion, detector and band'],
      asks: 'Which of them does the specification mean?',
    },
  ];
}

/** A displacement of a shaft has no band in the trade; a velocity or acceleration rms always has one. */
function withoutBand(limits: StatedLimits): readonly Found[] {
  const rows = knownRows(limits).filter(
    ([, { value }]) => value.band === undefined && value.quantity !== 'displacement' && value.detector === 'rms',
  );
  if (rows.length === 0) return [];
  return [
    {
      weight: 'question',
      at: `${limits.at}/limits`,
      found: `${rows.map(([name, row]) => `${name} ${row.written}`).join(', ')} without a band`,
      limit: inWords("a band, such as '10-1000 Hz'"),
      because: 'Which components count, and whether a sensor measures what is limited, depends on the band.',
      remedy: ['write the band behind the detector'],
      asks: 'In which band does the specification limit the rms value?',
    },
  ];
}
