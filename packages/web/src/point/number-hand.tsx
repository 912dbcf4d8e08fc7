import { useId } from 'react';
import type { HandleView } from '../engine/views.ts';
import { OpeningNumber } from '../parts/why.tsx';
import type { Hands } from './hands.ts';
import { useHeld } from './use-hands.ts';

/** One number for the hand: a decade either way; the arrow keys move it by a hundredth of a decade. */
export function NumberHand({ handle, hands }: { readonly handle: HandleView; readonly hands: Hands }) {
  const id = useId();
  const decades = useHeld(hands, ({ asked }) => asked.moved[handle.key] ?? 0);
  const shown = useHeld(hands, ({ picture }) => picture.shown[handle.key]) ?? handle.shown;
  const target = handle.of.startsWith('target ') ? `${handle.of.slice('target '.length)}: ` : '';
  return (
    <div className="number-hand">
      <div className="hand">
        <label className="what" htmlFor={id}>
          {target}
          {handle.what}
        </label>
        <output>
          <OpeningNumber
            asked={() => ({ is: 'handle', key: handle.key, trial: hands.asked })}
            what={`${target}${handle.what}`}
          >
            {shown}
          </OpeningNumber>
        </output>
        <input
          id={id}
          type="range"
          aria-label={`${target}${handle.what}`}
          min={-1}
          max={1}
          step={0.01}
          value={decades}
          aria-valuetext={shown}
          onChange={(event) => hands.move(handle.key, Number(event.target.value))}
        />
      </div>
      <button
        type="button"
        className={decades === 0 ? 'plain at-rest' : 'plain'}
        disabled={decades === 0}
        onClick={() => hands.move(handle.key, 0)}
      >
        Put back<span className="unseen"> {handle.what}</span>
      </button>
    </div>
  );
}
