import { loopValue } from '../../chain/formulas/loop-scaling.ts';
import { measuringCurrents } from '../../chain/formulas/loop-state.ts';
import { finding } from '../../finding/finding.ts';
import { measured, measuredLevel, said } from '../../finding/measure.ts';
import { level } from '../../quantity/index.ts';
import { namurNe43 } from '../../source/namur-ne-43.ts';
import { clause } from '../../source/source.ts';
import { exampleCase, rms } from './example.ts';
import { acting, alarmRule } from './rule.ts';

const sources = [clause(namurNe43, 'signal levels')];

export const withinRange = alarmRule({
  rule: 'alarm/within-range',
  title: 'A set point lies inside the range of the loop',
  prose:
    'A transmitter holds its current at 20.5 mA; a set point at or above that current is never exceeded, and above 20 mA it lies outside the calibrated range.',
  sources,
  findings: (subject) => {
    const { loop } = subject;
    if (!loop?.known) return [];
    const { low, high } = loop.value;
    const held = loopValue(measuringCurrents.high, low.value, high.value);
    return acting(subject).flatMap(({ row, level: set }) => {
      if (row.current?.known !== true || set.value <= high.value * (1 + 1e-9)) return [];
      const saturated = row.current.value >= measuringCurrents.high - 1e-9;
      return [
        finding({
          rule: 'alarm/within-range',
          weight: 'blocks-issue',
          at: subject.at,
          found: said`${row.name} at ${measuredLevel(set)}, ${measured('current', row.current.value)}`,
          limit: measuredLevel(saturated ? level(high.quantity, held, high.detector, high.band) : high),
          because: saturated
            ? said`The transmitter holds ${measured('current', measuringCurrents.high)}: the ${row.name} can never act.`
            : `The ${row.name} lies above the range, where the accuracy of the transmitter is not stated.`,
          remedy: ['a transmitter of a wider range', 'check unit and detector of the set point'],
          sources,
        }),
      ];
    });
  },
  passes: exampleCase({ trip: rms(25) }),
  fails: exampleCase({ trip: rms(26) }),
});
