import { execFile } from 'node:child_process';
import { access, constants, mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Surroundings } from '@soundpost/commands';
import { Refusal } from '@soundpost/core';
import { openBytes, readBytes, writeWhole, writeWholeFolder } from '@soundpost/store';
import { openWorkbench } from './open-workbench.ts';

const longestWait = 10_000;

/** Somebody stopped the command while it filled a folder; what stood there before stands as it was. */
export class Interrupted extends Error {
  readonly folder: string;

  constructor(folder: string) {
    super(`stopped while ${folder} was written`);
    this.folder = folder;
  }
}

/** The world as it is: files through the store, the clock, other programs. */
export function realSurroundings(step: (what: string) => void): Surroundings {
  // A folder is never taken away under a write that is under way: the next write of it refuses, and the store clears up.
  const stopped: { at?: string } = {};
  return {
    readBytes: (path) => readBytes(path),
    openFile: openBytes,
    writeFile: async (path, content, replacing) => {
      if (stopped.at !== undefined) throw new Interrupted(stopped.at);
      await makeFolder(dirname(path));
      await writeWhole(path, content, replacing);
    },
    writeFolder: async (folder, listing, fill) => {
      const stop = () => {
        stopped.at = folder;
      };
      process.on('SIGINT', stop);
      try {
        return await writeWholeFolder(folder, listing, fill);
      } finally {
        process.off('SIGINT', stop);
      }
    },
    canWrite: (path) =>
      access(path, constants.W_OK).then(
        () => true,
        () => false,
      ),
    firstLineOf,
    workbench: openWorkbench,
    step,
    now: () => new Date(),
    env: process.env,
    nodeVersion: process.version,
    root: fileURLToPath(new URL('../../..', import.meta.url)).replace(/[/\\]$/, ''),
  };
}

async function makeFolder(path: string): Promise<void> {
  try {
    await mkdir(path, { recursive: true });
  } catch (error) {
    if (!(error instanceof Error && 'code' in error)) throw error;
    throw new Refusal({
      read: path,
      expected: 'a folder that can be made',
      suggestion: `The system says: ${error.code}.`,
    });
  }
}

function firstLineOf(program: string, parameters: readonly string[]): Promise<string | undefined> {
  return new Promise((resolve) => {
    execFile(program, [...parameters], { timeout: longestWait }, (error, stdout, stderr) => {
      const first = `${stdout}\n${stderr}`.split('\n').find((line) => /\w/.test(line));
      resolve(error === null ? (first?.trim() ?? '') : undefined);
    });
  });
}
