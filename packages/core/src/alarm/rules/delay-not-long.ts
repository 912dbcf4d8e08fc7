import { finding } from '../../finding/finding.ts';
import { measured, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { leastTurns } from '../logic/response-time.ts';
import { exampleCase, seconds } from './example.ts';
import { type AlarmCase, alarmRule, deedOf } from './rule.ts';

const sources = [clause(tradePractice, 'longest usual delay')];

/** Longer than this a delay is asked about, in seconds. Common practice, no source. */
const longest = 60;

/** A slow machine is allowed twice the turns it must wait for anyway. */
const mostTurns = 2 * leastTurns;

export const delayNotLong = alarmRule({
  rule: 'alarm/delay-not-long',
  title: 'A delay of minutes is meant',
  prose:
    'While the delay runs the level stands above the set point and nobody is told. A minute is much for most machines; twenty turns may be more on a slow one. Minutes typed for seconds look the same.',
  sources,
  findings: (subject) => {
    const limit = longestUsual(subject);
    return subject.rows.flatMap((row) => {
      if (deedOf(row) === undefined || row.delay?.known !== true) return [];
      if (row.delay.value <= limit * (1 + 1e-9)) return [];
      return [
        finding({
          rule: 'alarm/delay-not-long',
          weight: 'question',
          at: subject.at,
          found: said`the ${row.name} waits ${measured('time', row.delay.value)}`,
          limit: measured('time', limit),
          because:
            'Until then the level may stand above the set point and nobody is told. The limit is common practice.',
          remedy: ['a shorter delay', 'state why the damage allows it'],
          sources,
          asks: `Is the delay of the ${row.name} meant so long, and does the damage allow it? Who owns the trip logic says.`,
        }),
      ];
    });
  },
  passes: exampleCase({ delay: seconds(60) }),
  fails: exampleCase({ delay: seconds(900) }),
});

/** A minute, or twenty turns of the shaft at its slowest where that is known and longer. */
function longestUsual({ slowest }: AlarmCase): number {
  if (slowest?.known !== true || slowest.value <= 0) return longest;
  return Math.max(longest, mostTurns / slowest.value);
}
