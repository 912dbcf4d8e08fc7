import type { Conflict, PlantOnDisk, Saved, Saving } from '@soundpost/server/protocol';

/** The plant as the server holds it. */
export async function fetchedPlant(): Promise<PlantOnDisk> {
  const response = await fetch('/api/plant');
  if (!response.ok) throw new Error(`The plant could not be read (${response.status}). ${await response.text()}`);
  return (await response.json()) as PlantOnDisk;
}

/** Saves; a conflict is an answer, and so is a server that cannot be reached, or one started anew that knows nobody yet. */
export async function saved(saving: Saving): Promise<Saved | Conflict | 'offline' | 'stranger'> {
  let response: Response;
  try {
    response = await fetch('/api/plant', {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(saving),
    });
  } catch {
    return 'offline';
  }
  if (response.status === 401) return 'stranger';
  if (response.ok || response.status === 409) return (await response.json()) as Saved | Conflict;
  throw new Error(`The plant could not be saved (${response.status}). ${await response.text()}`);
}

const pause = 3000;

/**
 * Calls back with what the file is now, as often as another program changed it or another tab saved it. A server that
 * was started anew refuses to be listened to until somebody was let in again, so that is tried again and again.
 */
export function watchedChanges(changed: (hash: string) => void): void {
  const source = new EventSource('/api/changes');
  for (const heard of ['current', 'changed', 'saved']) {
    source.addEventListener(heard, (event) => {
      changed((JSON.parse((event as MessageEvent<string>).data) as { hash: string }).hash);
    });
  }
  source.addEventListener('error', () => {
    if (source.readyState !== EventSource.CLOSED) return;
    setTimeout(() => watchedChanges(changed), pause);
  });
}
