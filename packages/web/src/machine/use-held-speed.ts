import { useEffect, useRef, useState } from 'react';
import { usePlantStore } from '../app/plant-context.tsx';
import type { HeldAnswer, SpeedAsked } from '../engine/machine/views.ts';

/**
 * What the machine does at the speed that is asked for. While one question is under way only the newest of the next
 * ones is kept, so that the picture follows the hand; the last answer stays until the next one is there.
 */
export function useHeldSpeed(name: string, asked: SpeedAsked, generation: number): HeldAnswer | undefined {
  const store = usePlantStore();
  const [held, setHeld] = useState<HeldAnswer>();
  const next = useRef<SpeedAsked | undefined>(undefined);
  const busy = useRef(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another text of the plant is a reason to ask again
  useEffect(() => {
    next.current = asked;
    if (busy.current) return;
    busy.current = true;
    const follow = async () => {
      while (next.current !== undefined) {
        const now = next.current;
        next.current = undefined;
        setHeld(await store.engine.heldSpeed(name, now));
      }
      busy.current = false;
    };
    void follow();
  }, [store, name, asked, generation]);
  return held;
}
