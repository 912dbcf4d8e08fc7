import { type Judgement, type Outcome, reasoned } from '../chain/rules/rule.ts';
import { type Finding, finding, type Weight } from '../finding/finding.ts';
import { Broken } from '../quantity/index.ts';
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
    const minor = judgement.target !== undefined && desirable.has(judgement.target);
    return [
      finding({
        rule: judgement.rule,
        weight: minor ? 'warns' : weightOf[judgement.outcome],
        at: judgement.target === undefined ? at : `${at}/${judgement.target}`,
        found: reasoned(judgement),
        limit: judgement.limit,
        because: rule.prose,
        remedy: judgement.needs === undefined ? rule.remedy : [judgement.needs, ...rule.remedy],
        sources: rule.sources,
        ...(judgement.missing === undefined
          ? {}
          : { asks: judgement.missing.map((each) => `What is the ${each.what} of ${each.of}?`).join(' ') }),
      }),
    ];
  });
}
