import type { SpeedView } from '../engine/views.ts';
import type { Hands } from './use-hands.ts';

/** The speed of the machine under the hand; as stated the chart shows the whole range. */
export function SpeedHand({
  speed,
  hands,
  shown,
}: {
  readonly speed: SpeedView;
  readonly hands: Hands;
  readonly shown: string | undefined;
}) {
  const { low, high, shownLow, shownHigh } = speed;
  if (low === high) return <p className="quiet">The machine runs at {shownLow}.</p>;
  return (
    <div className="speed-hand">
      <label>
        <span>
          Machine runs at <output>{shown ?? `${shownLow} to ${shownHigh}, as stated`}</output>
        </span>
        <input
          type="range"
          aria-label="Machine runs at"
          aria-valuetext={shown ?? `${shownLow} to ${shownHigh}, as stated`}
          min={0}
          max={1000}
          value={hands.asked.speed === undefined ? 1000 : ((hands.asked.speed - low) / (high - low)) * 1000}
          onChange={(event) => hands.run(low + (Number(event.target.value) / 1000) * (high - low))}
        />
      </label>
      <button type="button" disabled={hands.asked.speed === undefined} onClick={() => hands.run(undefined)}>
        Whole range
      </button>
    </div>
  );
}
