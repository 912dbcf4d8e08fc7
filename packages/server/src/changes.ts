import { type FSWatcher, watch } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { PlantFile } from './plant-on-disk.ts';

/** Events of a folder come in swarms; one look after the last is enough. */
const settling = 60;
/** Some shares send no events: there the time and size of the file are asked again and again. */
const slowly = 2000;

export type Heard = 'changed' | 'saved';

/** Tells listeners when the plant file changes: by another program, or by a save of another window. */
export class Changes {
  readonly #plant: PlantFile;
  readonly #listeners = new Set<(heard: Heard, hash: string) => void>();
  #watcher: FSWatcher | undefined;
  #poll: NodeJS.Timeout | undefined;
  #soon: NodeJS.Timeout | undefined;
  #seen = '';

  constructor(plant: PlantFile) {
    this.#plant = plant;
  }

  async start(): Promise<void> {
    const folder = dirname(await realpath(this.#plant.path).catch(() => this.#plant.path));
    try {
      this.#watcher = watch(folder, () => this.#lookSoon());
      this.#watcher.on('error', () => this.#watcher?.close());
    } catch {
      // No events here; the slow way is left.
    }
    this.#poll = setInterval(() => void this.#ask(), slowly).unref();
  }

  stop(): void {
    this.#watcher?.close();
    clearInterval(this.#poll);
    clearTimeout(this.#soon);
    this.#listeners.clear();
  }

  listen(listener: (heard: Heard, hash: string) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** A save from here is told apart from what other programs do. */
  saved(hash: string): void {
    this.#tell('saved', hash);
  }

  #lookSoon(): void {
    clearTimeout(this.#soon);
    this.#soon = setTimeout(() => void this.#look(), settling).unref();
  }

  async #ask(): Promise<void> {
    const now = await stat(this.#plant.path).then(
      ({ mtimeMs, size, ino }) => `${mtimeMs} ${size} ${ino}`,
      () => '',
    );
    if (now === this.#seen) return;
    this.#seen = now;
    await this.#look();
  }

  async #look(): Promise<void> {
    const hash = await this.#plant.changed();
    if (hash !== undefined) this.#tell('changed', hash);
  }

  #tell(heard: Heard, hash: string): void {
    for (const listener of this.#listeners) listener(heard, hash);
  }
}
