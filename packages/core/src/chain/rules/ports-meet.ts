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
    const { transducer, inLine, input, arrives, refused, meets, doubt } = prediction.chain;
    const isolated = inLine.some((part) => part.isolation !== undefined) && refused === undefined;
    const what = isolated ? 'behind the isolator the transducer stands as' : 'transducer is';
    if (doubt !== undefined || !arrives.known)
      return judged(unanswered(doubt ?? []), { rule: 'chain/ports-meet', what }, () => []);
    const takes = refused?.isolation?.takes ?? input.takes;
    return [
      {
        rule: 'chain/ports-meet',
        outcome: meets ? ('meets' as const) : ('fails' as const),
        what,
        found: inWords(refused === undefined ? arrives.value : transducer.feed),
        limit: inWords(`${refused?.of ?? 'input'} takes ${meets ? arrives.value : takes.join(', ')}`),
        ...(meets ? {} : { needs: `${refused === undefined ? 'an input' : 'an isolator'} for ${arrives.value}` }),
      },
    ];
  },
});
