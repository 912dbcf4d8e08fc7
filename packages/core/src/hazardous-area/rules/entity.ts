import { type Judgement, judged } from '../../chain/rules/rule.ts';
import { inWords, measuredDown, said } from '../../finding/measure.ts';
import { unanswered } from '../../quantity/index.ts';
import type { AreaComparison } from '../area-comparison.ts';
import { type EntityClause, type EntityComparison, entitySources } from '../entity-comparison.ts';
import { areaRule } from './area-rule.ts';
import { ownProtection } from './barrier.ts';

const id = 'area/entity';

export const entity = areaRule({
  id,
  title: 'What the barrier lets out, the loop bears; what the loop stores, the barrier allows',
  prose:
    'Uo, Io and Po of the barrier against Ui, Ii and Pi of the parts; Ci and Li with the cable against Co and Lo, which ' +
    'count half where both lumped values exceed 1 %. Equality passes, nothing is rounded, and a missing value proves nothing.',
  remedy: [
    'the declaration of the cable maker, signed',
    'an isolator with a larger Co',
    'a shorter cable in the field',
    'a transducer with a smaller Ci or Li',
  ],
  sources: entitySources,
  judge: (compared) => {
    const { entity: answer, loop } = compared;
    if (ownProtection(compared)) return [provenElsewhere(compared)];
    // Without a certificate there is nothing to compare, and the rule of certificates has said so.
    if (loop.uncertified !== undefined) return [];
    return judged(answer, { rule: id, what: 'comparison of the certificates' }, (known) => [
      ...known.clauses.map(clauseJudgement),
      lengthJudgement(known),
      ...declarationJudgement(compared, known),
    ]);
  },
});

function clauseJudgement(each: EntityClause): Judgement {
  return {
    rule: id,
    outcome: each.passed ? 'meets' : 'fails',
    what: each.name,
    found: { is: 'quantity', quantity: each.quantity, value: each.found },
    limit: { is: 'quantity', quantity: each.quantity, value: each.limit },
    // No margin: a clause of certificates has no nearness, what is equal passes in full.
    ...(each.passed ? {} : { needs: `${each.name} to hold` }),
  };
}

function lengthJudgement({ cable, maximumLength, limitedBy, passed, halved }: EntityComparison): Judgement {
  const most = said`${measuredDown(maximumLength)} by ${limitedBy}${halved ? ', Co and Lo halved' : ''}`;
  const within = passed || maximumLength >= cable.length;
  return {
    rule: id,
    outcome: within ? 'meets' : 'fails',
    what: `cable in the field, by values ${cable.known === 'declared' ? 'declared' : 'of the standard'},`,
    found: { is: 'quantity', quantity: 'length', value: cable.length },
    limit: said`${most}, rounded down`,
    ...(within ? {} : { needs: said`no more than ${most}` }),
  };
}

/** Where only the declaration carries the comparison, the paper it stands on must exist. */
function declarationJudgement(
  { byDefault, declaredBy }: AreaComparison,
  known: EntityComparison,
): readonly Judgement[] {
  if (known.cable.known !== 'declared' || !known.passed) return [];
  if (!byDefault.known || byDefault.value.passed) return [];
  return [
    {
      rule: id,
      outcome: 'warns',
      what: 'passes by the declared cable values alone;',
      found: inWords(`declaration: ${declaredBy ?? 'not named'}`),
      limit: said`${measuredDown(byDefault.value.maximumLength)} by the values of the standard`,
      needs: 'that declaration signed and in the file',
    },
  ];
}

function provenElsewhere({ loop }: AreaComparison): Judgement {
  const { of, markings } = loop.apparatus[0]!;
  const marking = markings.known ? markings.value[0]!.written : 'its marking';
  const what = `proof of ${marking} by the rules of its own kind of protection`;
  const [judgement] = judged(
    unanswered([{ of, what }]),
    { rule: id, what: 'comparison of the certificates' },
    () => [],
  );
  return judgement!;
}
