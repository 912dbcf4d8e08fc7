import { type Finding, finding, type Weight } from '../../finding/finding.ts';
import { measured } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { leastTurns as turns } from '../logic/response-time.ts';
import { exampleCase, seconds } from './example.ts';
import { type AlarmCase, alarmRule, deedOf } from './rule.ts';

const sources = [clause(tradePractice, 'delay longer than the physics', 'from memory')];

export const delay = alarmRule({
  rule: 'alarm/delay',
  title: 'A set point acts after a delay',
  prose:
    'Without a delay a knock, a radio or a loose connector stops the machine. A delay shorter than ten turns sees single events of a slow machine as a state.',
  sources,
  findings: (subject) =>
    subject.rows.filter((row) => deedOf(row) !== undefined).flatMap((row) => ofRow(row.name, row.delay, subject)),
  passes: exampleCase(),
  fails: exampleCase({ delay: seconds(0) }),
});

function ofRow(name: string, stated: AlarmCase['rows'][number]['delay'], subject: AlarmCase): readonly Finding[] {
  const say = (weight: Weight, rest: Pick<Finding, 'found' | 'limit' | 'because' | 'remedy'> & { asks?: string }) => [
    finding({ rule: 'alarm/delay', weight, at: subject.at, sources, ...rest }),
  ];
  if (stated?.known !== true) {
    return say('question', {
      found: `the delay of the ${name} is not known`,
      limit: 'a delay above zero',
      because: 'Whether a knock trips the machine depends on it.',
      remedy: ['state the delay'],
      asks: `How long must the level stand before the ${name} acts? Who owns the trip logic says.`,
    });
  }
  if (stated.value <= 0) {
    return say('blocks-issue', {
      found: `${name} without delay`,
      limit: 'a delay above zero',
      because: 'One knock or one loose contact would act at once.',
      remedy: ['1 to 3 s, or as long as the damage allows'],
    });
  }
  // A machine that may stand still turns no number of times.
  if (!subject.slowest?.known || subject.slowest.value <= 0) return [];
  const least = turns / subject.slowest.value;
  if (stated.value >= least * (1 - 1e-9)) return [];
  return say('warns', {
    found: measured('time', stated.value),
    limit: measured('time', least),
    because: `At its slowest the shaft turns fewer than ${turns} times within the delay of the ${name}.`,
    remedy: ['a longer delay', 'a set point for slow running of its own'],
  });
}
