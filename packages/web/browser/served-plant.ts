import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { workbench } from '@soundpost/server';
import { inject } from 'vitest';

const genericCatalogue = resolve(import.meta.dirname, '../../files/catalogues/generic.yaml');

/** A plant file in a folder of its own, behind the real server, which can go away and come back. */
export interface ServedPlant {
  readonly origin: string;
  /** Where the file stands. */
  readonly path: string;
  /** An address that lets a browser in, once. */
  address(): string;
  /** The file as it stands on the disk. */
  text(): string;
  /** Another program writes the file. */
  write(text: string): void;
  stop(): Promise<void>;
  /** The server comes back at the same port; it knows nobody yet. */
  start(): Promise<void>;
  [Symbol.asyncDispose](): Promise<void>;
}

export async function servedPlant(text: string): Promise<ServedPlant> {
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-plant-'));
  const plant = join(folder, 'plant.yaml');
  writeFileSync(plant, text);
  const page = inject('page');
  const opened = (port: number) => workbench({ plant, port, genericCatalogue, page });
  let running = await opened(0);
  const { port } = running;
  let runs = true;
  const stop = async () => {
    if (runs) await running.close();
    runs = false;
  };
  return {
    origin: `http://127.0.0.1:${port}`,
    path: plant,
    address: () => running.newAddress(),
    text: () => readFileSync(plant, 'utf8'),
    write: (changed) => writeFileSync(plant, changed),
    stop,
    start: async () => {
      running = await opened(port);
      runs = true;
    },
    [Symbol.asyncDispose]: async () => {
      await stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
