import { inWords } from '../../finding/measure.ts';
import { loopPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { rule } from './rule.ts';

export const oneNumber = rule({
  id: 'chain/one-number',
  title: 'One number shows no line and no burst',
  prose:
    'A sensor that detects inside sends one number for its whole band. What made it up, and at which frequency, cannot ' +
    'be had from it afterwards.',
  remedy: ['choose a transducer with a dynamic output', 'choose a device with both outputs'],
  sources: [clause(loopPractice)],
  judge: ({ point, prediction }) =>
    prediction.chain.transducer.signal === 'dynamic'
      ? []
      : point.targets
          .filter((target) => !target.observable.isOneNumber)
          .map((target) => ({
            rule: 'chain/one-number',
            target: target.name,
            outcome: 'fails' as const,
            what: 'gives',
            found: inWords('one overall value'),
            limit: inWords(target.observable.meaning),
            needs: 'a dynamic output',
          })),
});
