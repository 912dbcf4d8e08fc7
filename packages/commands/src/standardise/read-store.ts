import type { Store } from '@soundpost/core';
import { readYaml, storeReader } from '@soundpost/files';
import type { Surroundings } from '../surroundings.ts';

/** Prices and stock as their file states them. Throws UnreadableFile or Refusal. */
export async function readStore(surroundings: Surroundings, path: string): Promise<Store> {
  surroundings.step(`reading ${path}`);
  return readYaml(await surroundings.readBytes(path), path, storeReader).value;
}
