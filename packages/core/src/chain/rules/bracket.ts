import { measured } from '../../finding/measure.ts';
import { answerOf, type Sheet, type Stated } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { usableShareOfBracket } from '../formulas/bracket-first-mode.ts';
import { type Judgement, judged, marginOf, rule } from './rule.ts';

const id = 'chain/bracket';

export const bracket = rule({
  id,
  title: 'A bracket follows what is looked for',
  prose:
    'Above three tenths of its first mode a bracket adds its own motion, and beyond the mode it hides that of the machine. ' +
    "A stand-off against heat easily ruins the band for which it was made. 'bracket-first-mode' estimates the mode.",
  remedy: [
    'a shorter, thicker bracket',
    'a block instead of a plate',
    'mount on the housing',
    'tap it, and state the mode',
  ],
  sources: [clause(tradePractice, 'a bracket is used up to 0.3 of its first mode')],
  judge: ({ point, prediction }) => {
    const { sheet } = prediction.chain.parts.mount;
    const stated = (sheet as Sheet).values.bracketFirstMode as Stated<number> | undefined;
    if (stated === undefined) return [];
    const targets = point.targets.filter((target) => !target.observable.atRest);
    return judged(
      answerOf(stated, sheet.of, 'bracket first mode'),
      { rule: id, what: 'first mode of the bracket' },
      (mode) =>
        targets.flatMap((target) => {
          const what = 'highest frequency, on a bracket';
          const limit = measured('frequency', usableShareOfBracket * mode);
          return judged(target.band, { rule: id, what, target, limit }, ({ high }): readonly Judgement[] => {
            const follows = high <= usableShareOfBracket * mode;
            return [
              {
                rule: id,
                target: target.name,
                outcome: follows ? 'meets' : 'fails',
                what,
                found: measured('frequency', high),
                limit,
                margin: marginOf((usableShareOfBracket * mode) / high),
                ...(follows ? {} : { needs: 'a stiffer bracket, or none' }),
              },
            ];
          });
        }),
    );
  },
});
