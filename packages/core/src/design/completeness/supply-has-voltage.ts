import { supplyTerminals } from '../../chain/supply-terminals.ts';
import { finding } from '../../finding/finding.ts';
import { completenessRule } from './rule.ts';

const id = 'completeness/supply-voltage';
const remedy = ['state the voltage or the current from the data sheet of the part'];

export const supplyHasVoltage = completenessRule({
  id,
  title: 'Every supply has a voltage that can be looked for',
  prose:
    'Whoever tests a loop measures first whether it is fed. Where a core or terminals of its own carry the supply, its ' +
    'direct voltage follows from what feeds it, less what the line takes; what is missing for it is asked for, once a part.',
  remedy,
  sources: [],
  findings: ({ machines }) => {
    const seen = new Set<string>();
    return machines
      .flatMap((machine) => machine.points)
      .flatMap(({ point, appraisal }) => {
        const terminals = appraisal === undefined ? [] : supplyTerminals(appraisal.prediction.chain);
        return terminals
          .flatMap(({ voltage, is }) => (voltage.known || is === 'pair' ? [] : voltage.missing))
          .flatMap(({ of, what }) => {
            const key = `${what} of ${of}`;
            if (seen.has(key)) return [];
            seen.add(key);
            return [
              finding({
                rule: id,
                weight: 'question',
                at: point.of,
                found: `the ${key} is not known`,
                limit: 'a direct voltage at every terminal of a supply',
                because: 'Nobody can tell a supply that is wrong from one that is right.',
                remedy,
                sources: [],
                asks: `What is the ${key}? Its data sheet says.`,
              }),
            ];
          });
      });
  },
});
