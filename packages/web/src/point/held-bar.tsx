import type { Hands } from './use-hands.ts';

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
  const moved = Object.values(hands.asked.moved).filter((each) => each !== 0).length;
  const swapped = Object.keys(hands.asked.parts).length;
  const words = [
    ...(hands.asked.inLine === undefined ? [] : ['the line changed']),
    ...(swapped === 0 ? [] : [`${swapped} ${swapped === 1 ? 'part' : 'parts'} swapped`]),
    ...(moved === 0 ? [] : [`${moved} ${moved === 1 ? 'number' : 'numbers'} moved`]),
  ];
  return (
    <div className="held-bar">
      <p role="status">{words.length === 0 ? 'As the file states it.' : `In your hands: ${words.join(', ')}.`}</p>
      <button type="button" className="main" disabled={!hands.holds} onClick={keep}>
        Keep in the file
      </button>
      <button type="button" disabled={!hands.holds && hands.asked.speed === undefined} onClick={hands.letGo}>
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
