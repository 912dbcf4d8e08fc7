import { createHash } from 'node:crypto';
import { basename, dirname, isAbsolute, join, resolve } from 'node:path';
import { Refusal } from '@soundpost/core';
import { cataloguesNamed, genericCatalogue, textFile } from '@soundpost/files';
import { readBytes, writeWhole } from '@soundpost/store';
import { readJournal, writeJournal } from './journal-file.ts';
import type { Conflict, Journal, PlantOnDisk, Saved, Saving } from './protocol.ts';

/** The plant file on the disk: read and saved one after the other, however many ask at once. */
export class PlantFile {
  readonly path: string;
  readonly #generic: string;
  readonly #now: () => Date;
  #last: Promise<unknown> = Promise.resolve();
  /** The file as the page last had it from here; what differs was done by another program. */
  #known: string | undefined;

  constructor(path: string, genericCataloguePath: string, now: () => Date = () => new Date()) {
    this.path = resolve(path);
    this.#generic = genericCataloguePath;
    this.#now = now;
  }

  /** The file with everything it names. Throws Refusal in words. */
  read(): Promise<PlantOnDisk> {
    return this.#inTurn(async () => {
      const { bytes, hash, text } = await this.#standing();
      this.#known ??= hash;
      const journal = await readJournal(this.path, hash, this.#now());
      const catalogues = await this.#catalogues(bytes);
      return { path: this.path, name: basename(this.path), text, hash, catalogues, journal };
    });
  }

  /** Writes the history and then the file, each through to the disk, unless another program changed the file. */
  save({ base, text, journal }: Saving): Promise<Saved | Conflict> {
    return this.#inTurn(async () => {
      const bytes = new TextEncoder().encode(text);
      const hash = hashOf(bytes);
      const standing = await this.#standing();
      if (standing.hash !== base) return { text: standing.text, hash: standing.hash };
      const before = await readJournal(this.path, base, this.#now());
      await writeJournal(this.path, hash, journal, { hash: base, journal: before });
      try {
        if (hash !== base) await writeWhole(this.path, bytes, { overwrite: true, from: standing.bytes });
      } catch (error) {
        const now = await this.#standing();
        if (now.hash === base) throw error;
        // Another program saved while this was on its way to the disk: its file stands, and the history is its old self.
        await writeJournal(this.path, base, before);
        return { text: now.text, hash: now.hash };
      }
      this.#known = hash;
      return { hash };
    });
  }

  /** Writes the history of the file as it stands. */
  saveJournal(journal: Journal): Promise<Saved> {
    return this.#inTurn(async () => {
      const { hash } = await this.#standing();
      await readJournal(this.path, hash, this.#now());
      await writeJournal(this.path, hash, journal);
      return { hash };
    });
  }

  /** The hash of the file where another program changed it since it was last asked; undefined where none did. */
  changed(): Promise<string | undefined> {
    return this.#inTurn(async () => {
      const bytes = await readBytes(this.path).catch(() => undefined);
      // Many programs take the old file away before the new one has its name: the next look finds it.
      if (bytes === undefined) return undefined;
      const hash = hashOf(bytes);
      const first = this.#known === undefined;
      if (hash === this.#known) return undefined;
      this.#known = hash;
      return first ? undefined : hash;
    });
  }

  /** Settles when everything asked for so far is done. */
  async idle(): Promise<void> {
    await this.#last;
  }

  async #standing(): Promise<{ bytes: Uint8Array; hash: string; text: string }> {
    const bytes = await readBytes(this.path);
    return { bytes, hash: hashOf(bytes), text: exactText(bytes, this.path) };
  }

  async #catalogues(bytes: Uint8Array): Promise<PlantOnDisk['catalogues']> {
    const found: Record<string, { path: string; text: string }> = Object.create(null);
    for (const name of cataloguesNamed(bytes, this.path)) {
      const path = name === genericCatalogue ? this.#generic : this.#besidePlant(name);
      try {
        found[name] = { path, text: exactText(await readBytes(path), path) };
      } catch (error) {
        // What is missing or unreadable is refused where the plant names it, by its reader.
        if (!(error instanceof Refusal)) throw error;
      }
    }
    return found;
  }

  #besidePlant(name: string): string {
    return isAbsolute(name) ? name : join(dirname(this.path), name);
  }

  #inTurn<T>(act: () => Promise<T>): Promise<T> {
    const next = this.#last.then(act, act);
    this.#last = next.catch(() => undefined);
    return next;
  }
}

function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** The text whose bytes are exactly these. Throws UnreadableFile where they are no UTF-8. */
function exactText(bytes: Uint8Array, path: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return textFile(bytes, path).text;
  }
}
