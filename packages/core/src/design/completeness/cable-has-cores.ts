import { cableRuns } from '../../chain/cable-runs.ts';
import { feedCores } from '../../chain/feed-cores.ts';
import { finding } from '../../finding/finding.ts';
import { completenessRule } from './rule.ts';

const id = 'completeness/cable-cores';
const remedy = ['choose a cable with a core for each wire of the transducer', 'state the cores of the cable'];

export const cableHasCores = completenessRule({
  id,
  title: 'Every cable has the cores its transducer needs',
  prose:
    'A probe with its oscillator-demodulator takes supply, signal and common; in a pair one of them is left over, and ' +
    'whoever terminates it uses the screen. Only cables whose cores are stated are looked at; an unknown count is asked for.',
  remedy,
  sources: [],
  findings: ({ machines }) =>
    machines
      .flatMap((machine) => machine.points)
      .flatMap(({ point, appraisal }) => {
        if (appraisal === undefined) return [];
        const { chain } = appraisal.prediction;
        const needed = feedCores[chain.transducer.feed];
        const names = needed.join(', ');
        return cableRuns(chain).flatMap(({ number, cable }) => {
          const { cores } = cable.sheet.values;
          if (cores === undefined || (cores.known && cores.value >= needed.length)) return [];
          return [
            finding({
              rule: id,
              weight: cores.known ? 'blocks-issue' : 'question',
              at: point.of,
              found: cores.known
                ? `cable ${number}, ${cable.name}, has ${cores.value} ${cores.value === 1 ? 'core' : 'cores'}`
                : `how many cores cable ${number}, ${cable.name}, has is not known`,
              limit: `${needed.length} cores: ${names}`,
              because: 'A core that is not there is taken from the screen or from another loop.',
              remedy,
              sources: [],
              ...(cores.known ? {} : { asks: `How many cores has ${cable.name}?` }),
            }),
          ];
        });
      }),
});
