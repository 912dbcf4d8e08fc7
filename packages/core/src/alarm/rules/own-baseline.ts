import { finding } from '../../finding/finding.ts';
import { measuredLevel, said } from '../../finding/measure.ts';
import { iso20816x3edition2022 } from '../../source/iso-20816-3-2022.ts';
import { clause } from '../../source/source.ts';
import { exampleCase, rms } from './example.ts';
import { alarmRule } from './rule.ts';

const sources = [clause(iso20816x3edition2022, '6.2.3 and 6.5.2, baselines are per machine', 'second-hand')];

/** Words by which a source says that the number is another machine's. */
const others = /\b(sister|copied|copy of|like machines?|similar|same type|typical|twin)\b/i;

export const ownBaseline = alarmRule({
  rule: 'alarm/own-baseline',
  title: 'The baseline is this machine’s own',
  prose:
    'Two machines of one drawing differ by a factor of two and more. An alert above the level of a sister machine comes too early on this one, or too late.',
  sources,
  findings: ({ at, baseline }) => {
    if (baseline?.known !== true) return [];
    const borrowed = others.test(baseline.source ?? '');
    if (!borrowed && baseline.status !== 'assumed') return [];
    return [
      finding({
        rule: 'alarm/own-baseline',
        weight: 'question',
        at,
        found: said`a baseline of ${measuredLevel(baseline.value)} that is ${borrowed ? `another machine's: ${baseline.source}` : 'assumed'}`,
        limit: 'the level of this machine, healthy, at a known speed and load',
        because: 'The alert is a step above what this machine does when it is well.',
        remedy: ['measure it on this machine after a time of operation, and set the alert again'],
        sources,
        asks: 'What does this machine itself read when it is well?',
      }),
    ];
  },
  passes: exampleCase({
    subject: { baseline: { known: true, value: rms(2), written: '2 mm/s rms', status: 'measured', source: 'route' } },
  }),
  fails: exampleCase({
    subject: { baseline: { known: true, value: rms(2), written: '2 mm/s rms', source: 'sister machine K-12' } },
  }),
});
