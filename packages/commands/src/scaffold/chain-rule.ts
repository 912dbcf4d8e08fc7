import { listedIn } from './list-edit.ts';
import type { Names, Scaffold } from './scaffold.ts';

const folder = 'packages/core/src/chain/rules';

export const chainRuleScaffold: Scaffold = {
  word: 'chain-rule',
  meaning: 'a rule that judges a measuring chain',
  files: (names) => [
    { path: `${folder}/${names.kebab}.ts`, content: source(names) },
    { path: `${folder}/${names.kebab}.test.ts`, content: test(names) },
  ],
  lists: ({ kebab, camel }) => [listedIn(`${folder}/rules.ts`, 'chainRules', camel, `./${kebab}.ts`)],
};

const source = ({ kebab, camel, title }: Names) => `import { measured } from '../../finding/measure.ts';
import { answer, showQuantity } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

/** The longest settling a person waits for at each point of a route. Common practice, no source: state your own. */
const longest = 60;

export const ${camel} = rule({
  id: 'chain/${kebab}',
  title: '${title}',
  prose: 'Say here what the rule asks and why, in plain words. It is begun as: the transducer settles within a minute.',
  remedy: ['say what would mend it, most effective first'],
  sources: [clause(tradePractice)],
  judge: ({ prediction }) =>
    judged(
      prediction.chain.transducer.settling ?? answer(0),
      { rule: 'chain/${kebab}', what: 'settling' },
      (settling): readonly Judgement[] => [
        {
          rule: 'chain/${kebab}',
          outcome: settling <= longest ? 'meets' : 'fails',
          what: 'settling',
          found: measured('time', settling),
          limit: measured('time', longest),
          ...(settling <= longest ? {} : { needs: \`to settle within \${showQuantity('time', longest)}\` }),
        },
      ],
    ),
});
`;

const test = ({ kebab, camel }: Names) => `import { expect, test } from 'vitest';
import { type Answer, answer, unanswered } from '../../quantity/index.ts';
import { ${camel} } from './${kebab}.ts';
import type { Case } from './rule.ts';

/** Only what the rule looks at. */
function settlingIn(settling: Answer<number>): Case {
  return { prediction: { chain: { transducer: { settling } } } } as unknown as Case;
}

test('${kebab}: one chain that passes, one that fails, one of which nobody can tell', () => {
  const judge = (settling: Answer<number>) => ${camel}.judge(settlingIn(settling));
  expect(judge(answer(3))).toMatchObject([{ outcome: 'meets' }]);
  expect(judge(answer(600))).toMatchObject([{ outcome: 'fails', needs: expect.any(String) }]);
  const missing = [{ of: 'transducer X', what: 'settling' }];
  expect(judge(unanswered(missing))).toMatchObject([{ outcome: 'cannot tell', missing }]);
});
`;
