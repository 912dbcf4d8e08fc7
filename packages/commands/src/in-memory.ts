import { nearest, Refusal } from '@soundpost/core';
import { bytesInMemory } from '@soundpost/files';
import type { Content, Surroundings } from './surroundings.ts';

/** A world of files in memory, for tests and rehearsals: nothing in it reaches the disk. */
export interface InMemory extends Surroundings {
  /** Every file, by its path. */
  readonly files: Map<string, Uint8Array>;
  /** What was said to be done, in order. */
  readonly steps: string[];
}

function whole(content: Content): string | Uint8Array {
  return typeof content === 'string' || content instanceof Uint8Array ? content : [...content].join('');
}

export function inMemory(
  files: Readonly<Record<string, string | Uint8Array>>,
  world: Partial<Omit<Surroundings, 'readBytes' | 'openFile' | 'writeFile' | 'writeFolder' | 'step'>> = {},
): InMemory {
  const bytesOf = (content: string | Uint8Array) =>
    typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const standing = new Map(Object.entries(files).map(([path, content]) => [path, bytesOf(content)]));
  const steps: string[] = [];
  const standingAt = (path: string): Uint8Array => {
    const bytes = standing.get(path);
    if (bytes !== undefined) return bytes;
    const near = nearest(path, [...standing.keys()]);
    throw new Refusal({
      read: path,
      expected: 'a file that exists',
      ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
    });
  };
  return {
    files: standing,
    steps,
    readBytes: async (path) => standingAt(path),
    openFile: async (path) => ({ ...bytesInMemory(standingAt(path)), close: async () => {} }),
    writeFile: async (path, content, { overwrite, from }) => {
      if (from !== undefined && String(from) !== String(standing.get(path))) {
        throw new Refusal({ read: path, expected: 'a file that stands still while it is worked on' });
      }
      if (!overwrite && standing.has(path)) throw new Refusal({ read: path, expected: 'a name that is not taken' });
      standing.set(path, bytesOf(whole(content)));
    },
    writeFolder: async (folder, _, fill) => {
      const staged = `${folder}.unfinished`;
      const below = (path: string) => [...standing.keys()].filter((each) => each.startsWith(`${path}/`));
      try {
        if ((await fill(staged)) === 'keep') return undefined;
        for (const path of below(folder)) standing.delete(path);
        for (const path of below(staged)) standing.set(folder + path.slice(staged.length), standing.get(path)!);
        return undefined;
      } finally {
        for (const path of below(staged)) standing.delete(path);
      }
    },
    step: (what) => {
      steps.push(what);
    },
    canWrite: async () => true,
    workbench: async ({ plant }) => {
      if (!standing.has(plant)) throw new Refusal({ read: plant, expected: 'a file that exists' });
      steps.push(`the workbench of ${plant}`);
    },
    firstLineOf: async () => undefined,
    now: () => new Date(0),
    env: {},
    nodeVersion: 'v20.19.0',
    root: 'house',
    ...world,
  };
}
