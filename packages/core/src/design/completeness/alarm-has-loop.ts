import { finding } from '../../finding/finding.ts';
import { completenessRule } from './rule.ts';

const id = 'completeness/alarm-loop';
const remedy = ['choose the chain that carries the alarm', 'take the alarm out'];

export const alarmHasLoop = completenessRule({
  id,
  title: 'Every alarm is carried by a chain',
  prose: 'An alarm at a point where no chain is chosen, or whose input does not take what arrives, can never act.',
  remedy,
  sources: [],
  findings: ({ machines }) =>
    machines
      .flatMap((machine) => machine.points)
      .flatMap(({ point, alarms, appraisal }) => {
        if (alarms === undefined) return [];
        const chain = appraisal?.prediction.chain;
        if (chain !== undefined && (chain.meets || chain.doubt !== undefined)) return [];
        return [
          finding({
            rule: id,
            weight: 'blocks-issue',
            at: point.of,
            found:
              chain === undefined
                ? 'an alarm is stated and no chain is chosen'
                : `its input ${chain.parts.input.name} does not take what arrives`,
            limit: 'a chain from the surface to whoever acts',
            because: 'It would stand in the register and protect nothing.',
            remedy,
            sources: [],
          }),
        ];
      }),
});
