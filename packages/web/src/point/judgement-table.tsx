import { memo } from 'react';
import type { JudgementView, PointView } from '../engine/views.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';
import { OpeningNumber, Why } from '../parts/why.tsx';
import { type Hands, holdsParts } from './hands.ts';
import { useTold } from './use-hands.ts';

/** Every judgement of the chain under the hand; where a hand changed one, what it was stands beside it. */
export function JudgementTable({ point, hands }: { readonly point: PointView; readonly hands: Hands }) {
  const { of } = point;
  const { asked, trial } = useTold(hands);
  const { judgements } = trial;
  const before = holdsParts(asked) ? point.trial.judgements : undefined;
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
                .map((each) => (
                  <JudgementRow
                    key={keyOf(each)}
                    of={of}
                    hands={hands}
                    judgement={each}
                    was={was.get(keyOf(each))?.outcome}
                  />
                ))}
            </tbody>
          ))}
        </table>
      </section>
    </div>
  );
}

/** A row; one that says what it said is not set again, however often the hand was asked. */
const JudgementRow = memo(function JudgementRow({ of, hands, judgement, was }: JudgementRowOf) {
  const { rule, target, what, found, limit, margin, outcome } = judgement;
  const turned = was !== undefined && was !== outcome;
  const number = {
    asked: () => ({ is: 'judgement', of, rule, target, what, trial: hands.told.asked }) as const,
    aside: true,
  };
  return (
    <tr className={turned ? 'turned' : undefined}>
      <td>
        {what} <Why of={of} rule={rule} target={target} what={what} trial={() => hands.told.asked} />
      </td>
      <td>
        <OpeningNumber {...number} what="Found">
          {found}
        </OpeningNumber>
      </td>
      <td>
        <OpeningNumber {...number} what="Limit">
          {limit}
        </OpeningNumber>
      </td>
      <td className="number">
        {margin === undefined ? (
          ''
        ) : (
          <OpeningNumber {...number} what="Margin">
            {margin}
          </OpeningNumber>
        )}
      </td>
      <td>
        <OutcomeWord outcome={outcome} />
        {turned ? <span className="quiet"> was {was}</span> : undefined}
      </td>
    </tr>
  );
}, saysTheSame);

interface JudgementRowOf {
  readonly of: string;
  readonly hands: Hands;
  readonly judgement: JudgementView;
  readonly was: JudgementView['outcome'] | undefined;
}

function saysTheSame(one: JudgementRowOf, other: JudgementRowOf): boolean {
  const [a, b] = [one.judgement, other.judgement];
  const judged = a.found === b.found && a.limit === b.limit && a.margin === b.margin && a.outcome === b.outcome;
  return judged && keyOf(a) === keyOf(b) && one.was === other.was && one.of === other.of && one.hands === other.hands;
}

function keyOf({ rule, target, what }: JudgementView): string {
  return `${rule} ${target ?? ''} ${what}`;
}
