import { inWords } from '../../finding/measure.ts';
import { answerOf, type Sheet, type Stated } from '../../quantity/index.ts';
import { barrierPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const barrierEarth = rule({
  id: 'chain/barrier-earth',
  title: 'The earth of the barrier is the only one',
  prose:
    'A shunt-diode barrier ties the line to earth in the cabinet. A transducer whose signal touches the machine ties it a ' +
    'second time: the loop between both earths carries hum into the signal, and the protection is no longer what it was.',
  remedy: ['a transducer with an isolated case', 'an isolating stud', 'a galvanic isolator in place of the barrier'],
  sources: [clause(barrierPractice)],
  judge: ({ prediction: { chain } }) => {
    const barrier = chain.inLine.find((part) => part.earthed !== undefined);
    if (barrier === undefined || chain.mount.isolates) return [];
    const { sheet } = chain.parts.transducer;
    const isolated = answerOf(
      (sheet as Sheet).values.caseIsolated as Stated<boolean> | undefined,
      sheet.of,
      'case isolated',
    );
    const what = `earths of the line beside that of ${barrier.of}`;
    return judged(isolated, { rule: 'chain/barrier-earth', what }, (known): readonly Judgement[] => [
      {
        rule: 'chain/barrier-earth',
        outcome: known ? 'meets' : 'fails',
        what,
        found: inWords(known ? 'none, the case is isolated' : 'the case on the machine'),
        limit: inWords('none'),
        ...(known ? {} : { needs: 'a case or stud that isolates' }),
      },
    ]);
  },
});
