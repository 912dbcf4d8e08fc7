import type { Conflict, PlantOnDisk, Saved, Saving } from '@soundpost/server/protocol';

/** The plant as the server holds it. */
export async function fetchedPlant(): Promise<PlantOnDisk> {
  const response = await fetch('/api/plant');
  if (!response.ok) throw new Error(`The plant could not be read (${response.status}). ${await response.text()}`);
  return (await response.json()) as PlantOnDisk;
}

/** Saves; a conflict is an answer, and so is a server that cannot be reached. */
export async function saved(saving: Saving): Promise<Saved | Conflict | 'offline'> {
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
  if (response.ok || response.status === 409) return (await response.json()) as Saved | Conflict;
  throw new Error(`The plant could not be saved (${response.status}). ${await response.text()}`);
}

/** Calls back when another program changed the file. */
export function watchedChanges(changed: (hash: string) => void): void {
  const source = new EventSource('/api/changes');
  source.addEventListener('changed', (event) => {
    changed((JSON.parse((event as MessageEvent<string>).data) as { hash: string }).hash);
  });
}
