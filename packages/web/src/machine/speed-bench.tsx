import { useRef, useState } from 'react';
import type { HeldSpeed, MachineBench, SpeedAsked, SpeedRange } from '../engine/machine/views.ts';
import { Help } from '../parts/help.tsx';
import { Markup } from '../parts/markup.tsx';
import { OpeningMarkup } from '../parts/opening-markup.tsx';
import { OpeningNumber } from '../parts/why.tsx';
import { SpeedTyped } from './speed-typed.tsx';
import { useHeldSpeed } from './use-held-speed.ts';

interface SpeedBenchOptions {
  readonly bench: MachineBench;
  readonly generation: number;
}

/** The speed map with a speed under the hand: dragged, stepped with the arrow keys, or typed. */
export function SpeedBench({ bench, generation }: SpeedBenchOptions) {
  return (
    <section aria-labelledby="speed">
      <h2 id="speed">
        At one speed{' '}
        <Help of="the speed map">
          <p>
            Every line the train makes, over the speeds it is said to run at. A full line follows the speed, a
            dash-dotted one stands still. Where they cross, a spectrum taken there shows one line for two causes.
          </p>
          <p>Arrow keys move the speed by a two-hundredth of the range, page keys by a tenth.</p>
        </Help>
      </h2>
      {bench.speed === undefined ? (
        <p className="empty">
          The range this machine runs over is not stated, so nothing can be drawn over it. State it under ‘How it is
          run’ below.
        </p>
      ) : (
        <Held key={bench.name} bench={bench} speed={bench.speed} generation={generation} />
      )}
    </section>
  );
}

function Held({ bench, speed, generation }: SpeedBenchOptions & { readonly speed: SpeedRange }) {
  const [asked, setAsked] = useState<SpeedAsked>({ at: speed.high });
  const answer = useHeldSpeed(bench.name, asked, generation);
  const last = useRef<HeldSpeed | undefined>(undefined);
  if (answer !== undefined && !('refused' in answer)) last.current = answer;
  const refused = answer !== undefined && 'refused' in answer ? answer.refused : undefined;
  const held = last.current;
  const at = 'at' in asked ? asked.at : (held?.at ?? speed.high);
  const numberAt = (place: number) =>
    ({ is: 'held speed', machine: bench.name, asked: { at: held?.at ?? at }, place }) as const;
  const step = (speed.high - speed.low) / 200;
  return (
    <div className="speed-bench">
      <div className="speed-map">
        <Markup className="wide" markup={held?.map ?? ''} />
        <Markup className="narrow" markup={held?.narrowMap ?? ''} />
        {speed.low === speed.high ? undefined : (
          <input
            type="range"
            aria-label={`${speed.of}, held`}
            min={speed.low}
            max={speed.high}
            step={step}
            value={Math.min(speed.high, Math.max(speed.low, at))}
            aria-valuetext={held?.shown ?? ''}
            onChange={(event) => setAsked({ at: Number(event.target.value) })}
          />
        )}
        <div className="speed-line">
          <p className="held" aria-live="polite">
            <span className="quiet">{speed.of}</span> <output>{held?.shown ?? ''}</output>{' '}
            <span className="quiet">
              {speed.low === speed.high ? 'its only speed' : 'of '}
              {speed.low === speed.high ? undefined : (
                <OpeningNumber asked={{ is: 'speed range', machine: bench.name }} what="Range">
                  {speed.shownLow} to {speed.shownHigh}
                </OpeningNumber>
              )}
            </span>
          </p>
          <SpeedTyped shown={held?.shown ?? ''} refused={refused} type={(typed) => setAsked({ typed })} />
        </div>
        {held?.outside === undefined ? undefined : <p className="outside">{held.outside}</p>}
        <p className="caption-below">{bench.mapCaption}</p>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls by itself is to be reached with the keys */}
      <section className="at-speed" tabIndex={0} aria-label="What comes close at this speed">
        <OpeningMarkup markup={held?.meetings ?? ''} asked={numberAt} />
        <OpeningMarkup markup={held?.close ?? ''} asked={numberAt} />
      </section>
      <OpeningMarkup className="at-speed-lines" markup={held?.lines ?? ''} asked={numberAt} />
    </div>
  );
}
