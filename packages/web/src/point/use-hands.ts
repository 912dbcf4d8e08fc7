import { useEffect, useRef, useState } from 'react';
import { usePlantState, usePlantStore } from '../app/plant-context.tsx';
import type { PlaceView, TrialAsked, TrialView } from '../engine/views.ts';

export interface Hands {
  readonly asked: TrialAsked;
  readonly trial: TrialView | undefined;
  readonly holds: boolean;
  move(key: string, decades: number): void;
  place(place: PlaceView['place'], name: string): void;
  line(inLine: readonly string[]): void;
  run(speed: number | undefined): void;
  letGo(): void;
}

function emptyHands(of: string): TrialAsked {
  return { of, moved: {}, parts: {}, speed: undefined };
}

/**
 * What the hands hold at a point, and what the chain would then be. While one question is under way only the newest of
 * the next ones is kept: the picture follows the hand and never queues behind it.
 */
export function useHands(of: string, first: TrialView, width: 'wide' | 'narrow'): Hands {
  const store = usePlantStore();
  const { generation } = usePlantState();
  const [asked, setAsked] = useState<TrialAsked>(() => emptyHands(of));
  const [trial, setTrial] = useState<TrialView | undefined>(first);
  const next = useRef<TrialAsked | undefined>(undefined);
  const busy = useRef(false);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another text of the plant is a reason to ask again
  useEffect(() => {
    next.current = { ...asked, width };
    store.touched();
    if (busy.current) return;
    busy.current = true;
    const follow = async () => {
      while (next.current !== undefined) {
        const now = next.current;
        next.current = undefined;
        setTrial(await store.engine.trial(now));
      }
      busy.current = false;
    };
    void follow();
  }, [store, asked, generation, width]);

  return {
    asked,
    trial,
    holds:
      Object.values(asked.moved).some((each) => each !== 0) ||
      Object.keys(asked.parts).length > 0 ||
      asked.inLine !== undefined,
    move: (key, decades) => setAsked((before) => ({ ...before, moved: { ...before.moved, [key]: decades } })),
    place: (place, name) => setAsked((before) => ({ ...before, parts: { ...before.parts, [place]: name } })),
    line: (inLine) => setAsked((before) => ({ ...before, inLine })),
    run: (speed) => setAsked((before) => ({ ...before, speed })),
    letGo: () => setAsked(emptyHands(of)),
  };
}
