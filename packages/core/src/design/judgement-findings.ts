import { type Judgement, type Outcome, reasoned, toKnow } from '../chain/rules/rule.ts';
import { type Finding, finding, type Weight } from '../finding/finding.ts';
import { askMissing, Broken } from '../quantity/index.ts';
import { appraisalRules } from '../selection/rules.ts';

const weightOf: Readonly<Record<Exclude<Outcome, 'meets'>, Weight>> = {
  fails: 'blocks-issue',
  'cannot tell': 'question',
  warns: 'warns',
};

/** What the rules said of a chosen chain, as findings: what is met is no finding. */
export function judgementFindings(
  judgements: readonly Judgement[],
  at: string,
  desirable: ReadonlySet<string>,
): readonly Finding[] {
  return judgements.flatMap((judgement) => {
    if (judgement.outcome === 'meets') return [];
    const rule = appraisalRules.find((each) => each.id === judgement.rule);
    if (rule === undefined) throw new Broken('a judgement comes from a rule of the list', { rule: judgement.rule });
    const needs =
      judgement.missing !== undefined && judgement.needs === toKnow(judgement.missing) ? undefined : judgement.needs;
    const minor = judgement.target !== undefined && desirable.has(judgement.target);
    return [
      finding({
        rule: judgement.rule,
        weight: minor ? 'warns' : weightOf[judgement.outcome],
        at: judgement.target === undefined ? at : `${at}/${judgement.target}`,
        found: reasoned(judgement),
        limit: judgement.limit,
        because: rule.prose,
        // What only has to be known is asked already.
        remedy: needs === undefined ? rule.remedy : [needs, ...rule.remedy],
        sources: rule.sources,
        ...(judgement.missing === undefined ? {} : { asks: askMissing(judgement.missing) }),
      }),
    ];
  });
}
