import { mkdir, readdir, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { isRunning } from './unfinished-file.ts';

// The name says who writes: what no living process of this machine writes is left over.
const thisMachine = hostname().replace(/[^A-Za-z0-9-]/g, '-');
let count = 0;

/** A new empty folder beside one that is to be replaced. */
export async function newStaged(folder: string): Promise<string> {
  count += 1;
  const staged = join(dirname(folder), `${beginningFor(folder)}${process.pid}.${count}.unfinished`);
  await rm(staged, { recursive: true, force: true });
  await mkdir(staged);
  return staged;
}

/** Takes away what a process of this machine that runs no longer left unfinished. */
export async function takeLeftoversAway(folder: string): Promise<void> {
  const beginning = beginningFor(folder);
  for (const name of await readdir(dirname(folder))) {
    if (!name.startsWith(beginning) || !name.endsWith('.unfinished')) continue;
    const writer = Number(name.slice(beginning.length).split('.', 1)[0]);
    if (!isRunning(writer)) await rm(join(dirname(folder), name), { recursive: true, force: true });
  }
}

function beginningFor(folder: string): string {
  return `.${basename(folder)}.${thisMachine}.`;
}
