import { type Judgement, judged } from '../../chain/rules/rule.ts';
import { measured } from '../../finding/measure.ts';
import { answerOf } from '../../quantity/index.ts';
import { barrierPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { areaRule } from './area-rule.ts';

const id = 'area/earth';

/** Highest resistance from the bar of the barriers to the main earth, ohms. Common practice, no source. */
export const highestEarthResistance = 1;

export const earth = areaRule({
  id,
  title: 'A shunt-diode barrier has its earth',
  prose:
    'Its diodes work only against an earth of little resistance, on a conductor of its own. An isolator asks for none.',
  remedy: ['an earth conductor of its own, measured', 'a galvanic isolator'],
  sources: [clause(barrierPractice)],
  judge: ({ area, loop: { barrier } }) => {
    if (barrier?.earthed !== true) return [];
    const what = `earth of ${barrier.of}`;
    const resistance = answerOf<number>(area.values.earthResistance, area.of, 'earth resistance');
    return judged(resistance, { rule: id, what, limit: measured('resistance', highestEarthResistance) }, (ohms) => {
      const below = ohms < highestEarthResistance;
      const judgement: Judgement = {
        rule: id,
        outcome: below ? 'meets' : 'fails',
        what,
        found: measured('resistance', ohms),
        limit: { is: 'words', words: 'below 1 Ω' },
        ...(below ? {} : { needs: 'an earth below 1 Ω' }),
      };
      return [judgement];
    });
  },
});
