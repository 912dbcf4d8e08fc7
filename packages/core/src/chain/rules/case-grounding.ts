import { inWords } from '../../finding/measure.ts';
import { answerOf, type Sheet, type Stated } from '../../quantity/index.ts';
import { screeningRules, tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const caseGrounding = rule({
  id: 'chain/case-grounding',
  title: 'One earth point in the loop',
  prose:
    'A transducer whose case is its signal ground is earthed by the machine; an online system is earthed in its cabinet. ' +
    'Between the two earths flows what the plant makes of them, and it is read as vibration at line frequency. A portable ' +
    'collector floats, so there the case may be the ground.',
  remedy: ['a case-isolated transducer', 'an isolating stud, its compliance counted'],
  sources: [clause(screeningRules, 'rule 1'), clause(tradePractice, 'case grounding')],
  judge: ({ point, prediction }) => {
    const { transducer, mount, parts } = prediction.chain;
    if (transducer.reference !== 'casing') return [];
    const stated = (parts.transducer.sheet as Sheet).values.caseIsolated as Stated<boolean> | undefined;
    return judged(
      answerOf(stated, parts.transducer.sheet.of, 'case isolated'),
      { rule: 'chain/case-grounding', what: 'case' },
      (isolated): readonly Judgement[] => {
        const floats = point.installation === 'portable';
        const apart = isolated || mount.isolates;
        return [
          {
            rule: 'chain/case-grounding',
            outcome: apart || floats ? 'meets' : 'fails',
            what: 'case',
            found: inWords(
              isolated ? 'isolated from the signal' : mount.isolates ? 'isolated by its mount' : 'is the signal ground',
            ),
            limit: inWords(floats ? 'either, on a collector that floats' : 'isolated, on a system earthed elsewhere'),
            ...(apart || floats ? {} : { needs: 'a case-isolated transducer, or an isolating stud' }),
          },
        ];
      },
    );
  },
});
