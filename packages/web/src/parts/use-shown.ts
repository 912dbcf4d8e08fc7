import { useEffect } from 'react';

/** What was chosen from a list is in view: its line in the list, and its sheet from the top. */
export function useShown(chosen: string | undefined): void {
  useEffect(() => {
    if (chosen === undefined) return;
    window.scrollTo(0, 0);
    document.querySelector('.shelf-list [aria-current]')?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
}
