import { type Judgement, judged } from '../../chain/rules/rule.ts';
import { inWords } from '../../finding/measure.ts';
import { answer, unanswered } from '../../quantity/index.ts';
import { iec60079x0 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { areaRule } from './area-rule.ts';

const id = 'area/conditions';

export const conditions = areaRule({
  id,
  title: 'Special conditions of use are known and carried on',
  prose:
    'An X behind the number says that the certificate holds under conditions only. They must reach whoever installs, or ' +
    'the certificate does not hold.',
  remedy: ['the conditions from the certificate, entered with the part'],
  sources: [clause(iec60079x0, 'special conditions of use')],
  judge: ({ loop }) => {
    const certificates = [
      ...loop.apparatus.map((each) => each.certificate),
      ...(loop.barrier === undefined ? [] : [loop.barrier.certificate]),
    ];
    return certificates
      .filter(({ number }) => number.known && /X\s*$/.test(number.value))
      .flatMap(({ of, number, conditions: words }) => {
        const what = `conditions of ${number.known ? number.value : of}:`;
        const told = words === undefined ? unanswered([{ of, what: 'special conditions (X)' }]) : answer(words);
        return judged(told, { rule: id, what }, (known): readonly Judgement[] => [
          { rule: id, outcome: 'meets', what, found: inWords(known), limit: inWords('carried to the installation') },
        ]);
      });
  },
});
