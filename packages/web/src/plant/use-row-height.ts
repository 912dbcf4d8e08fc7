import { useSyncExternalStore } from 'react';

const coarse = () => window.matchMedia('(pointer: coarse)');

function subscribe(changed: () => void): () => void {
  const query = coarse();
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}

/** The height of a line: a finger needs more than a pointer. */
export function useRowHeight(): number {
  return useSyncExternalStore(subscribe, () => coarse().matches) ? 44 : 34;
}
