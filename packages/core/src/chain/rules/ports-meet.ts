import { inWords } from '../../finding/measure.ts';
import { unanswered } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { judged, rule } from './rule.ts';

export const portsMeet = rule({
  id: 'chain/ports-meet',
  title: 'The input takes what the transducer gives',
  prose:
    'Each transducer is fed in its own way: constant current, loop, negative supply, or not at all. An input that feeds ' +
    'another way shows nothing, or something that looks like a reading.',
  remedy: ['an input of that kind', 'a converter between the two'],
  sources: [clause(tradePractice)],
  judge: ({ prediction }) => {
    const { transducer, input, meets, doubt } = prediction.chain;
    if (doubt !== undefined)
      return judged(unanswered(doubt), { rule: 'chain/ports-meet', what: 'transducer is' }, () => []);
    return [
      {
        rule: 'chain/ports-meet',
        outcome: meets ? ('meets' as const) : ('fails' as const),
        what: 'transducer is',
        found: inWords(transducer.feed),
        limit: inWords(`input takes ${meets ? transducer.feed : input.takes.join(', ')}`),
        ...(meets ? {} : { needs: `an input for ${transducer.feed}` }),
      },
    ];
  },
});
