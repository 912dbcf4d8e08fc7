import type { JudgementView, TrialAsked } from '../engine/views.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';
import { OpeningNumber, Why } from '../parts/why.tsx';

/** Every judgement of the chain under the hand; where a hand changed one, what it was stands beside it. */
export function JudgementTable({
  of,
  asked,
  judgements,
  before,
}: {
  readonly of: string;
  readonly asked: TrialAsked;
  readonly judgements: readonly JudgementView[];
  readonly before: readonly JudgementView[] | undefined;
}) {
  if (judgements.length === 0) return undefined;
  const was = new Map(before?.map((each) => [keyOf(each), each]));
  const groups = [...new Set(judgements.map((each) => each.target))].sort(
    (a, b) => Number(a === undefined) - Number(b === undefined),
  );
  return (
    <div className="judgements">
      <h2 id="judgements-title">Against its targets</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen is scrolled by key */}
      <section className="pushed" tabIndex={0} aria-labelledby="judgements-title">
        <table>
          <thead>
            <tr>
              <th scope="col">Judged</th>
              <th scope="col">Found</th>
              <th scope="col">Limit</th>
              <th scope="col" className="number">
                Margin
              </th>
              <th scope="col">Outcome</th>
            </tr>
          </thead>
          {groups.map((target) => (
            <tbody key={target ?? 'the chain'}>
              <tr className="group">
                <th scope="rowgroup" colSpan={5}>
                  <bdi>{target ?? 'The chain as a whole'}</bdi>
                </th>
              </tr>
              {judgements
                .filter((each) => each.target === target)
                .map((each) => {
                  const old = was.get(keyOf(each));
                  const turned = old !== undefined && old.outcome !== each.outcome;
                  const number = {
                    asked: { is: 'judgement', of, rule: each.rule, target: each.target, what: each.what, trial: asked },
                    aside: true,
                  } as const;
                  return (
                    <tr key={keyOf(each)} className={turned ? 'turned' : undefined}>
                      <td>
                        {each.what} <Why of={of} rule={each.rule} target={each.target} what={each.what} trial={asked} />
                      </td>
                      <td>
                        <OpeningNumber {...number} what="Found">
                          {each.found}
                        </OpeningNumber>
                      </td>
                      <td>
                        <OpeningNumber {...number} what="Limit">
                          {each.limit}
                        </OpeningNumber>
                      </td>
                      <td className="number">
                        {each.margin === undefined ? (
                          ''
                        ) : (
                          <OpeningNumber {...number} what="Margin">
                            {each.margin}
                          </OpeningNumber>
                        )}
                      </td>
                      <td>
                        <OutcomeWord outcome={each.outcome} />
                        {turned ? <span className="quiet"> was {old.outcome}</span> : undefined}
                      </td>
                    </tr>
                  );
                })}
            </tbody>
          ))}
        </table>
      </section>
    </div>
  );
}

function keyOf({ rule, target, what }: JudgementView): string {
  return `${rule} ${target ?? ''} ${what}`;
}
