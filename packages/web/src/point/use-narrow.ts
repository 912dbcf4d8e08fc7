import { useSyncExternalStore } from 'react';

const telephone = '(max-width: 720px)';

/** Whether the screen is as narrow as a telephone. */
export function useNarrow(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const watched = window.matchMedia(telephone);
      watched.addEventListener('change', changed);
      return () => watched.removeEventListener('change', changed);
    },
    () => window.matchMedia(telephone).matches,
  );
}
