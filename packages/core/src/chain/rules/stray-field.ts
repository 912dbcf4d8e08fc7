import { inWords } from '../../finding/measure.ts';
import { answerOf } from '../../quantity/index.ts';
import { screeningRules } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const strayField = rule({
  id: 'chain/stray-field',
  title: 'No coil in a stray magnetic field',
  prose:
    'A coil is made to give a voltage when a field changes in it. Beside a generator, a large motor or a bus bar it gives ' +
    'one without any motion, at line frequency and its harmonics, where electrical faults are looked for.',
  remedy: ['a transducer without a coil', 'a place outside the field'],
  sources: [clause(screeningRules, 'rule 1')],
  judge: ({ point, prediction }) => {
    if (prediction.chain.transducer.disturbedByField !== true) return [];
    const stated = point.surroundings.values.strayField;
    const what = `field at ${prediction.chain.parts.transducer.name}`;
    const limit = inWords('no strong magnetic field');
    if (stated === undefined) {
      return [
        {
          rule: 'chain/stray-field',
          outcome: 'warns',
          what,
          found: inWords('not stated'),
          limit,
          needs: 'a place without a strong magnetic field',
        },
      ];
    }
    return judged(
      answerOf(stated, point.of, 'stray field'),
      { rule: 'chain/stray-field', what },
      (strong): readonly Judgement[] => [
        {
          rule: 'chain/stray-field',
          outcome: strong ? 'fails' : 'meets',
          what,
          found: inWords(strong ? 'a strong magnetic field' : 'none'),
          limit,
          ...(strong ? { needs: 'a transducer without a coil' } : {}),
        },
      ],
    );
  },
});
