import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Surroundings } from '@soundpost/commands';
import { Broken } from '@soundpost/core';
import { openBytes, readBytes, writeWhole, writeWholeFolder } from '@soundpost/store';

const never = async (): Promise<never> => {
  throw new Broken('an issue neither serves nor runs other programs', {});
};

/** What a command that reads and writes files may do from the server. */
export function issueSurroundings(step: Surroundings['step']): Surroundings {
  return {
    readBytes: (path) => readBytes(path),
    openFile: openBytes,
    writeFile: async (path, content, replacing) => {
      await mkdir(dirname(path), { recursive: true });
      await writeWhole(path, content, replacing);
    },
    writeFolder: writeWholeFolder,
    canWrite: async () => true,
    firstLineOf: never,
    workbench: never,
    step,
    now: () => new Date(),
    env: {},
    nodeVersion: process.version,
    root: fileURLToPath(new URL('../../../..', import.meta.url)).replace(/[/\\]$/, ''),
  };
}
