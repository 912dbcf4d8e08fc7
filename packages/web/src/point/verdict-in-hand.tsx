import { Fragment } from 'react';
import type { PointView } from '../engine/views.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';
import { OpeningNumber, Why } from '../parts/why.tsx';
import type { Hands } from './hands.ts';
import { useHeld, useTold } from './use-hands.ts';

/** The verdict on the chain under the hand, and what stands behind it. */
export function VerdictInHand({ point, hands }: { readonly point: PointView; readonly hands: Hands }) {
  const { outcome, decides } = useHeld(hands, (each) => each.picture);
  const { judgements } = useTold(hands).trial;
  return (
    <p className="point-verdict" aria-live="polite">
      <OutcomeWord outcome={outcome} />{' '}
      <span className="quiet">
        {outcome === 'no chain' ? 'nothing measures here yet' : 'against its '}
        {outcome === 'no chain' ? undefined : (
          <OpeningNumber asked={{ is: 'covered', points: [point.of] }} what="Stated targets">
            {new Set(judgements.flatMap((each) => each.target ?? [])).size} stated targets
          </OpeningNumber>
        )}
      </span>
      {decides.length === 0 ? undefined : (
        <span className="nearest">
          {outcome === 'meets' ? 'Nearest to failing: ' : ''}
          {decides.slice(0, 2).map(({ words, ...judgement }, index) => (
            <Fragment key={`${judgement.rule} ${judgement.target ?? ''} ${judgement.what}`}>
              {index === 0 ? '' : '; '}
              {words} <Why of={point.of} {...judgement} trial={hands.asked} />
            </Fragment>
          ))}
          {decides.length > 2 ? `; and ${decides.length - 2} more below` : ''}
        </span>
      )}
    </p>
  );
}
