import { useSyncExternalStore } from 'react';

const tall = () => window.matchMedia('(pointer: coarse), (max-width: 720px)');

function subscribe(changed: () => void): () => void {
  const query = tall();
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}

/** The height of a line: a finger needs more than a pointer, and a narrow page writes names on two lines. */
export function useRowHeight(): number {
  return useSyncExternalStore(subscribe, () => tall().matches) ? 44 : 34;
}
