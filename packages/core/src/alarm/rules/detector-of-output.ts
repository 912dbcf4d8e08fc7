import { finding } from '../../finding/finding.ts';
import { bareNumber, measuredLevel, said } from '../../finding/measure.ts';
import { level, sineFactor } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { exampleCase } from './example.ts';
import { acting, alarmRule } from './rule.ts';

const sources = [clause(tradePractice, 'loop full scale: rms or peak')];

export const detectorOfOutput = alarmRule({
  rule: 'alarm/detector-of-output',
  title: 'A set point is of the quantity and detector that the sensor puts out',
  prose:
    'A set point in rms on a sensor that sends peak acts at 71 % of what was meant for a sine, and for other waveforms nobody knows where.',
  sources,
  findings: (subject) => {
    const { output } = subject;
    if (!output?.known) return [];
    const { quantity, detector } = output.value;
    return acting(subject).flatMap(({ row, level: set }) => {
      if (set.quantity === quantity && set.detector === detector) return [];
      const ratio = sineFactor[detector] / sineFactor[set.detector];
      const off =
        set.quantity === quantity
          ? said`For a sine it is off by the factor ${bareNumber(ratio, 4)}, for other waveforms by an unknown one.`
          : 'The two are unlike quantities; no factor leads from one to the other without the frequency.';
      return [
        finding({
          rule: 'alarm/detector-of-output',
          weight: 'blocks-issue',
          at: subject.at,
          found: measuredLevel(set),
          limit: `a set point as ${detector} ${quantity}, which the sensor puts out`,
          because: said`The ${row.name} would not act at the level that was meant. ${off}`,
          remedy: [`state the ${row.name} as ${detector} ${quantity}`, 'take a sensor with the detector of the limit'],
          sources,
        }),
      ];
    });
  },
  passes: exampleCase(),
  fails: exampleCase({ trip: level('velocity', 0.009, 'peak') }),
});
