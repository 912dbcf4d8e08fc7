import { startTransition, useEffect, useState, useSyncExternalStore } from 'react';
import { usePlantStore } from '../app/plant-context.tsx';
import type { PointView } from '../engine/views.ts';
import { type ChartWidth, Hands, type Told } from './hands.ts';

/** The hands at a point, with the chart as wide as it is shown. */
export function useHands(point: PointView, width: ChartWidth): Hands {
  const store = usePlantStore();
  const [hands] = useState(() => new Hands(store, point));
  useEffect(() => hands.setWidth(width), [hands, width]);
  return hands;
}

/** One thing of what the hands hold; whoever reads it is drawn again only where it is another than before. */
export function useHeld<T>(hands: Hands, read: (hands: Hands) => T): T {
  return useSyncExternalStore(hands.subscribe, () => read(hands));
}

/** All that is told of the chain in the hands. It may be long to set, so a move of the hand comes before it. */
export function useTold(hands: Hands): Told {
  const [told, setTold] = useState(hands.told);
  useEffect(() => {
    const follow = () => startTransition(() => setTold(hands.told));
    let last = hands.told;
    follow();
    return hands.subscribe(() => {
      if (hands.told === last) return;
      last = hands.told;
      follow();
    });
  }, [hands]);
  return told;
}
