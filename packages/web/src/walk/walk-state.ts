import { useSyncExternalStore } from 'react';

const flag = 'soundpost-walk';
/** Counts the walks of this page; nothing where none is under way. */
let walk: number | undefined = seen() ? undefined : 1;
let walks = 1;
const listeners = new Set<() => void>();

/** Whether somebody has been through the walk on this machine, or put it away. A page that may keep nothing shows it. */
function seen(): boolean {
  try {
    return localStorage.getItem(flag) === 'seen';
  } catch {
    return false;
  }
}

function put(now: number | undefined): void {
  walk = now;
  for (const listener of listeners) listener();
}

/** Begins at the first step, also where a walk is under way. */
export function startWalk(): void {
  walks += 1;
  put(walks);
}

export function endWalk(): void {
  try {
    localStorage.setItem(flag, 'seen');
  } catch {
    // A page that may keep nothing shows the walk again next time; there is no harm in that.
  }
  put(undefined);
}

export function useWalk(): number | undefined {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => walk,
  );
}
