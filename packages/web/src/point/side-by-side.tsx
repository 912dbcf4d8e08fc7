import type { TrialView } from '../engine/views.ts';
import { Markup } from '../parts/markup.tsx';
import { OutcomeWord } from '../parts/verdict-word.tsx';
import type { Hands } from './hands.ts';
import { useHeld } from './use-hands.ts';

/** Two designs of one point: the one set aside, and the one under the hand. */
export function SideBySide({
  aside,
  hands,
  close,
}: {
  readonly aside: TrialView;
  readonly hands: Hands;
  readonly close: () => void;
}) {
  const now = useHeld(hands, ({ picture }) => picture);
  return (
    <div className="side-by-side">
      {(
        [
          ['Set aside', aside],
          ['Under the hand', now],
        ] as const
      ).map(([title, trial]) => (
        <figure key={title}>
          <figcaption>
            <strong>{title}</strong> <OutcomeWord outcome={trial.outcome} />
          </figcaption>
          <Markup markup={trial.chart.replaceAll('amplitude-', `${title.replaceAll(' ', '-')}-`)} />
          <p className="quiet">{trial.decides[0]?.words ?? ''}</p>
        </figure>
      ))}
      <button type="button" onClick={close}>
        Stop comparing
      </button>
    </div>
  );
}
