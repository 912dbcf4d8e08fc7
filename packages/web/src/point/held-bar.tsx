import type { Hands } from './hands.ts';
import { useHeld } from './use-hands.ts';

/** What to do with what the hands hold: keep it in the file, put it back, or set it aside to compare. */
export function HeldBar({
  hands,
  refused,
  keep,
  setAside,
  compares,
}: {
  readonly hands: Hands;
  readonly refused: string | undefined;
  readonly keep: () => void;
  readonly setAside: () => void;
  readonly compares: boolean;
}) {
  const lineChanged = useHeld(hands, ({ asked }) => asked.inLine !== undefined);
  const moved = useHeld(hands, ({ asked }) => Object.values(asked.moved).filter((each) => each !== 0).length);
  const swapped = useHeld(hands, ({ asked }) => Object.keys(asked.parts).length);
  const holds = useHeld(hands, (each) => each.holds);
  const runs = useHeld(hands, ({ asked }) => asked.speed !== undefined);
  const words = [
    ...(!lineChanged ? [] : ['the line changed']),
    ...(swapped === 0 ? [] : [`${swapped} ${swapped === 1 ? 'part' : 'parts'} swapped`]),
    ...(moved === 0 ? [] : [`${moved} ${moved === 1 ? 'number' : 'numbers'} moved`]),
  ];
  return (
    <div className="held-bar">
      <p role="status">{words.length === 0 ? 'As the file states it.' : `In your hands: ${words.join(', ')}.`}</p>
      <button type="button" className="main" disabled={!holds} onClick={keep}>
        Keep in the file
      </button>
      <button type="button" disabled={!holds && !runs} onClick={() => hands.letGo()}>
        Put all back
      </button>
      <button type="button" onClick={setAside}>
        {compares ? 'Compare with this instead' : 'Set aside to compare'}
      </button>
      {refused === undefined ? undefined : (
        <p className="refused" role="alert">
          Not kept. {refused}
        </p>
      )}
    </div>
  );
}
