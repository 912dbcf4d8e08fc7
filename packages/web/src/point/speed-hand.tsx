import type { SpeedRange } from '../engine/machine/views.ts';
import { OpeningNumber } from '../parts/why.tsx';
import type { Hands } from './hands.ts';
import { useHeld } from './use-hands.ts';

/** What the machine is run by, under the hand; as stated the chart shows the whole range. */
export function SpeedHand({
  speed,
  hands,
  machine,
}: {
  readonly machine: string;
  readonly speed: SpeedRange;
  readonly hands: Hands;
}) {
  const { of, low, high, shownLow, shownHigh } = speed;
  const held = useHeld(hands, ({ asked }) => asked.speed);
  const shown = useHeld(hands, ({ picture }) => picture.speed);
  const now = shown ?? `${shownLow} to ${shownHigh}, as stated`;
  if (low === high) {
    return (
      <p className="quiet">
        The machine runs at one <bdi>{of}</bdi>,{' '}
        <OpeningNumber asked={{ is: 'speed range', machine }} what={of}>
          {shownLow}
        </OpeningNumber>
        .
      </p>
    );
  }
  return (
    <div className="speed-hand">
      <div>
        <p>
          Machine runs at a <bdi>{of}</bdi> of{' '}
          <output>
            <OpeningNumber asked={{ is: 'speed range', machine }} what={of}>
              {now}
            </OpeningNumber>
          </output>
        </p>
        <input
          type="range"
          aria-label={`${of}, held`}
          aria-valuetext={now}
          min={0}
          max={1000}
          value={held === undefined ? 1000 : ((held - low) / (high - low)) * 1000}
          onChange={(event) => hands.run(low + (Number(event.target.value) / 1000) * (high - low))}
        />
      </div>
      <button type="button" disabled={held === undefined} onClick={() => hands.run(undefined)}>
        Whole range
      </button>
    </div>
  );
}
