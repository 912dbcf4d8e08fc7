import { finding } from '../../finding/finding.ts';
import { measured, measuredLevel, said } from '../../finding/measure.ts';
import { level } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { exampleCase, logic, rms } from './example.ts';
import { acting, alarmRule } from './rule.ts';

const sources = [clause(tradePractice, 'hysteresis')];

export const resets = alarmRule({
  rule: 'alarm/resets',
  title: 'An alarm that has come can go again',
  prose:
    'Below its hysteresis an alarm resets. Where that lies below what the machine does when it is well, an alarm that came once stands for ever; without any it chatters.',
  sources,
  findings: (subject) => {
    const hysteresis = subject.logic?.values.hysteresis;
    if (hysteresis?.known !== true) return [];
    const base = subject.baseline?.known === true ? subject.baseline.value : undefined;
    return acting(subject).flatMap(({ row, level: set }) => {
      if (base === undefined || base.quantity !== set.quantity || base.detector !== set.detector) return [];
      const reset = level(set.quantity, set.value * (1 - hysteresis.value), set.detector, set.band);
      if (reset.value > base.value) return [];
      return [
        finding({
          rule: 'alarm/resets',
          weight: 'blocks-issue',
          at: subject.at,
          found: said`the ${row.name} resets below ${measuredLevel(reset)}, ${measured('fraction', hysteresis.value, 3)} under its set point`,
          limit: measuredLevel(base),
          because: 'The machine does more than that when it is well: once come, the alarm stands for ever.',
          remedy: ['a smaller hysteresis', 'a higher set point'],
          sources,
        }),
      ];
    });
  },
  passes: exampleCase({
    subject: { logic: logic({ hysteresis: 0.05 }), baseline: { known: true, value: rms(2), written: '' } },
  }),
  fails: exampleCase({
    subject: { logic: logic({ hysteresis: 0.6 }), baseline: { known: true, value: rms(2), written: '' } },
  }),
});
