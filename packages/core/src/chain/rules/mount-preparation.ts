import { measured, said } from '../../finding/measure.ts';
import { answerOf, type QuantityName, type Sheet, type Stated } from '../../quantity/index.ts';
import { iso5348 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

const id = 'chain/mount-preparation';

/** What fitters keep to, from memory: M5, M6 and quarter-inch studs in steel. A drawing or data sheet goes before it. */
export const mountingPractice: readonly {
  readonly field: string;
  readonly what: string;
  readonly quantity: QuantityName;
  readonly least?: number;
  readonly most?: number;
  readonly otherwise: string;
}[] = [
  { field: 'torque', what: 'torque', quantity: 'torque', least: 2, most: 7, otherwise: 'the torque of the data sheet' },
  { field: 'flatness', what: 'flatness', quantity: 'length', most: 50e-6, otherwise: 'a spot face' },
  { field: 'roughness', what: 'roughness', quantity: 'length', most: 3.2e-6, otherwise: 'a finer spot face' },
];

export const mountPreparation = rule({
  id,
  title: 'The place is made ready as practice has it',
  prose:
    'Too little torque rattles, too much pulls the thread; a face that is not flat or smooth is a spring; a stud that ' +
    'reaches the ground of its hole feels tight and is loose. Values as remembered: 2 to 7 N·m, flat within 0.05 mm, Ra of ' +
    '3.2 µm at most.',
  remedy: ['spot-face, clean, a film of grease', 'the torque of the data sheet', 'tap the hole deeper'],
  sources: [clause(iso5348, 'torque, flatness and roughness', 'from memory')],
  judge: ({ prediction }) => {
    const { sheet } = prediction.chain.parts.mount;
    const values = (sheet as Sheet).values as Readonly<Record<string, Stated<number> | undefined>>;
    const ofPractice = mountingPractice.flatMap((each): readonly Judgement[] => {
      const stated = values[each.field];
      if (stated === undefined) return [];
      const { least = 0, most = Number.POSITIVE_INFINITY } = each;
      return judged(answerOf(stated, sheet.of, each.what), { rule: id, what: each.what }, (value) => {
        const inside = value >= least && value <= most;
        const upTo = said`${measured(each.quantity, most)} at most`;
        return [
          {
            rule: id,
            outcome: inside ? 'meets' : 'warns',
            what: each.what,
            found: measured(each.quantity, value),
            limit: least > 0 ? said`${measured(each.quantity, least)} to ${upTo}` : upTo,
            ...(inside ? {} : { needs: each.otherwise }),
          },
        ];
      });
    });
    return [...ofPractice, ...bottoming(sheet.of, values)];
  },
});

/** A stud must end before its hole does. */
function bottoming(of: string, values: Readonly<Record<string, Stated<number> | undefined>>): readonly Judgement[] {
  const { threadDepth, studReach } = values;
  if (threadDepth === undefined || studReach === undefined) return [];
  const what = 'reach of the stud';
  return judged(answerOf(threadDepth, of, 'thread depth'), { rule: id, what }, (depth) =>
    judged(answerOf(studReach, of, 'stud reach'), { rule: id, what }, (reach): readonly Judgement[] => [
      {
        rule: id,
        outcome: reach < depth ? 'meets' : 'fails',
        what,
        found: measured('length', reach),
        limit: measured('length', depth),
        ...(reach < depth ? {} : { needs: 'a deeper thread, or a shorter stud' }),
      },
    ]),
  );
}
