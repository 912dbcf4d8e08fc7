import { valueIfStated } from '../../quantity/index.ts';
import { inductionMotorPractice } from '../../source/induction-motor-practice.ts';
import { clause } from '../../source/source.ts';
import { motorTrain } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

export const polesEven = trainRule({
  id: 'machine/poles-even',
  title: 'Poles come in pairs',
  prose:
    'A winding has a south pole for every north pole. An odd number of poles is a number of pole pairs, or misread.',
  sources: [clause(inductionMotorPractice, 'poles and pole pairs')],
  finds: ({ train }) =>
    train.elements.flatMap(({ sheet: { of, values } }) => {
      const poles = 'poles' in values ? valueIfStated(values.poles) : undefined;
      if (poles === undefined || poles % 2 === 0) return [];
      return [
        {
          weight: 'question',
          at: of,
          found: `${poles} poles`,
          limit: 'an even number of poles',
          because: 'No speed of the train follows from it, and none of its lines.',
          remedy: [`write ${2 * poles} poles if ${poles} pole pairs were meant`],
          asks: `Has the motor ${2 * poles} poles, which is ${poles} pole pairs?`,
        },
      ];
    }),
  valid: motorTrain({}),
  invalid: motorTrain({ poles: 3, 'rated-speed': '986 r/min' }),
});
