import { type Finding, finding, type Weight } from '../../finding/finding.ts';
import { bareNumber, type Measure, measured, measuredLevel, said } from '../../finding/measure.ts';
import { level, valueIfStated } from '../../quantity/index.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { exampleCase, logic } from './example.ts';
import { type AlarmCase, acting, alarmRule } from './rule.ts';

const sources = [
  clause(api670, 'set point multiplier', 'from memory'),
  clause(tradePractice, 'multiply rather than inhibit at start'),
];

/** Set points are usually multiplied by 2, at most by 3, to pass a critical speed. */
const mostFactor = 3;

export const atStart = alarmRule({
  rule: 'alarm/at-start',
  title: 'What is done with the set points while the machine starts',
  prose:
    'Set points that are multiplied still protect while a critical speed is passed; set points that are inhibited do not. Either must end by itself, and soon.',
  sources,
  findings: (subject) => {
    if (subject.logic === undefined) return [];
    const { atStart: action, startFactor, startTime } = subject.logic.values;
    const does = valueIfStated(action);
    if (does === undefined || does === 'none') return [];
    const found: Finding[] = [];
    if (startTime?.known !== true) {
      found.push(
        say(subject, 'question', {
          found: `${does} at start, for a time that is not known`,
          limit: 'a time after which it ends by itself',
          because: 'What does not end by itself stays: a machine then runs for months without its trip.',
          remedy: ["state 'start-time'"],
          asks: 'For how long are the set points changed at start?',
        }),
      );
    }
    if (does === 'inhibit') {
      const time = startTime?.known === true ? measured('duration', startTime.value) : 'an unknown time';
      found.push(
        say(subject, 'warns', {
          found: said`no alarm for ${time} after start`,
          limit: 'set points that are multiplied, not inhibited',
          because: 'A rub or a lost blade most often comes at start, and nothing would act.',
          remedy: ['multiply the set points instead', 'keep at least one trip alive'],
        }),
      );
    } else if (startFactor?.known !== true) {
      found.push(
        say(subject, 'question', {
          found: 'the set points are multiplied at start, by how much is not known',
          limit: 'a stated factor',
          because: 'Too little trips at every critical speed, too much is no trip.',
          remedy: ["state 'start-factor'"],
          asks: 'By how much are the set points multiplied at start?',
        }),
      );
    } else {
      found.push(...multiplied(subject, startFactor.value));
    }
    return found;
  },
  passes: exampleCase({ subject: { logic: logic({ atStart: 'multiply', startFactor: 2, startTime: 90 }) } }),
  fails: exampleCase({ subject: { logic: logic({ atStart: 'inhibit', startTime: 90 }) } }),
});

function multiplied(subject: AlarmCase, factor: number): readonly Finding[] {
  const found: Finding[] = [];
  if (factor > mostFactor || factor < 1) {
    found.push(
      say(subject, 'warns', {
        found: measured('ratio', factor),
        limit: `1 to ${mostFactor}`,
        because: factor < 1 ? 'The set points would be lower at start.' : 'So high a set point protects from nothing.',
        remedy: ['look at the run-up: how much does the machine vibrate at its critical speeds?'],
      }),
    );
  }
  const high = subject.loop?.known === true ? subject.loop.value.high : undefined;
  for (const { row, level: set } of acting(subject)) {
    if (high === undefined || high.quantity !== set.quantity || high.detector !== set.detector) continue;
    if (set.value * factor <= high.value * (1 + 1e-9)) continue;
    found.push(
      say(subject, 'blocks-issue', {
        found: said`${row.name} times ${bareNumber(factor)}: ${showMeasured(set, factor)}`,
        limit: measuredLevel(high),
        because: `The ${row.name} lies beyond the range while the machine starts: it can never act then.`,
        remedy: ['a smaller factor', 'a transmitter of a wider range'],
      }),
    );
  }
  return found;
}

function showMeasured(set: Parameters<typeof measuredLevel>[0], factor: number): Measure {
  const moved = level(set.quantity, set.value * factor, set.detector);
  return said`${measured(moved.quantity, moved.value)} ${moved.detector}`;
}

type Says = Pick<Finding, 'found' | 'limit' | 'because' | 'remedy'> & { readonly asks?: string };

function say({ at }: AlarmCase, weight: Weight, says: Says): Finding {
  return finding({ rule: 'alarm/at-start', weight, at, sources, ...says });
}
