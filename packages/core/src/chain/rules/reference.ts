import { sees } from '../../demand/target.ts';
import { inWords } from '../../finding/measure.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { rule } from './rule.ts';

export const reference = rule({
  id: 'chain/reference',
  title: 'Whose motion',
  prose:
    'A proximity probe sees the shaft move against its bracket, a transducer on the housing sees the housing move. ' +
    'Neither can stand for the other: between them lies the oil film.',
  remedy: [
    'choose a transducer that senses the motion the target asks for',
    'ask for the other motion, with its own limits',
  ],
  sources: [clause(tradePractice)],
  judge: ({ point, prediction }) =>
    point.targets
      .filter((target) => !sees(prediction.chain.transducer.reference, target.reference))
      .map((target) => ({
        rule: 'chain/reference',
        target: target.name,
        outcome: 'fails' as const,
        what: 'measures',
        found: inWords(`${prediction.chain.transducer.reference} motion`),
        limit: inWords(`${target.reference} motion`),
        needs: `a transducer for ${target.reference} motion`,
      })),
});
