import type { KeyboardEvent } from 'react';

const steps: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowDown: (at) => at + 1,
  ArrowUp: (at) => at - 1,
  Home: () => 0,
  End: (_, last) => last,
};

/** Moves the focus from finding to finding; where the last one set is left downwards, `more` brings others. */
export function stepThrough(event: KeyboardEvent, list: HTMLElement | null, more: () => void): void {
  const step = steps[event.key];
  if (step === undefined || list === null || event.altKey || event.ctrlKey || event.metaKey) return;
  const places = [...list.querySelectorAll<HTMLElement>('[data-place]')];
  const at = places.indexOf(event.target as HTMLElement);
  const to = step(at, places.length - 1);
  event.preventDefault();
  if (to >= places.length - 1) more();
  const place = places[to];
  place?.focus({ preventScroll: true });
  place?.closest('article')?.scrollIntoView({ block: 'center' });
}
