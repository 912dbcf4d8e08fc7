import { useEffect, useRef, useState } from 'react';
import type { HeardView } from '../engine/rehearsal/rehearsal-views.ts';

interface Playing {
  readonly context: AudioContext;
  readonly name: string;
}

/** The motion and what each chain made of it, by ear. Nothing sounds before somebody presses play. */
export function Listening({ heard }: { readonly heard: readonly (readonly [name: string, HeardView])[] }) {
  const now = useRef<Playing>(undefined);
  const [playing, setPlaying] = useState<string>();
  const [loudness, setLoudness] = useState(0.3);
  const gain = useRef<GainNode>(undefined);
  const stop = () => {
    void now.current?.context.close();
    now.current = undefined;
    setPlaying(undefined);
  };
  useEffect(() => () => void now.current?.context.close(), []);
  const play = (name: string, { rate, samples }: HeardView) => {
    stop();
    const context = new AudioContext();
    const buffer = context.createBuffer(1, samples.length, rate);
    buffer.copyToChannel(samples as Float32Array<ArrayBuffer>, 0);
    const source = new AudioBufferSourceNode(context, { buffer });
    gain.current = new GainNode(context, { gain: loudness });
    source.connect(gain.current).connect(context.destination);
    source.addEventListener('ended', () => {
      if (now.current?.context === context) stop();
    });
    now.current = { context, name };
    setPlaying(name);
    source.start();
  };
  if (heard.length === 0) return <p className="quiet">This record cannot be played: a browser plays 8 to 96 kHz.</p>;
  return (
    <section className="listening" aria-label="Listen">
      <h2>Listen</h2>
      <p>
        <strong>Turn headphones down before the first press.</strong>{' '}
        <span className="quiet">
          Each sound is set to the same greatest swing, so that levels cannot be compared by ear; what the chain takes
          away or adds can.
        </span>
      </p>
      <div className="sounds">
        {heard.map(([name, view]) => (
          <button
            key={name}
            type="button"
            aria-pressed={playing === name}
            onClick={() => (playing === name ? stop() : play(name, view))}
          >
            <span aria-hidden="true">{playing === name ? '■' : '▶'}</span> {playing === name ? 'Stop' : 'Play'}{' '}
            <bdi>{name}</bdi>
          </button>
        ))}
        <label className="loudness">
          Loudness
          <input
            type="range"
            min="0"
            max="1"
            step="0.05"
            value={loudness}
            onChange={(event) => {
              setLoudness(Number(event.target.value));
              gain.current?.gain.setValueAtTime(Number(event.target.value), gain.current.context.currentTime);
            }}
          />
        </label>
      </div>
    </section>
  );
}
