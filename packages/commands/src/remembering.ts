import type { Surroundings } from './surroundings.ts';

/** Keeps what is read, in its order, so that a hash can be taken of everything an answer rests on. */
export function remembering(surroundings: Surroundings, read: Uint8Array[]): Surroundings {
  return {
    ...surroundings,
    readBytes: async (path) => {
      const bytes = await surroundings.readBytes(path);
      read.push(bytes);
      return bytes;
    },
  };
}
