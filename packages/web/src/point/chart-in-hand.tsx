import { useLayoutEffect, useRef } from 'react';
import { redraw } from '../parts/redraw.ts';
import type { Hands } from './hands.ts';

/** The amplitude chart as the hand moves it; no other part of the page is asked. */
export function ChartInHand({ hands }: { readonly hands: Hands }) {
  const place = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    let drawn = '';
    const draw = () => {
      const { chart } = hands.picture;
      if (chart !== drawn) redraw(place.current!, chart);
      drawn = chart;
    };
    draw();
    return hands.subscribe(draw);
  }, [hands]);
  return <div className="amplitude" ref={place} />;
}
