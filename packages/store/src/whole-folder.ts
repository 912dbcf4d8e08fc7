import { mkdir, readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { type Listing, takeListedAway } from './listed-files.ts';
import { newStaged, takeLeftoversAway } from './staged-folder.ts';
import { flushFolder, orNothing } from './whole-file.ts';

/** What becomes of the folder that stands there, once the new one is filled. */
export type Filled = 'replace' | 'keep';

/**
 * Writes a folder as a whole: `fill` writes into a folder beside it, which then takes the name. Whenever the process or
 * the machine stops, there stands the old folder or the new one; in the instant between the two, the old one under
 * another name, and `recoveredFolder` gives it its own back. Where `fill` fails or says `keep`, nothing of what it wrote
 * stays. Of the old folder goes what its listing names and what is as listed; anything else is somebody's own, and is
 * kept beside it: the answer is where. Throws the errors of the file system.
 */
export async function replaceFolder(
  folder: string,
  listing: Listing,
  fill: (staged: string) => Promise<Filled>,
): Promise<string | undefined> {
  await mkdir(dirname(folder), { recursive: true });
  await recoveredFolder(folder, listing);
  await takeLeftoversAway(folder);
  const staged = await newStaged(folder);
  try {
    if ((await fill(staged)) === 'keep') return undefined;
    await flushTree(staged);
    const aside = asideOf(folder);
    const stands = await isThere(folder);
    if (stands) await rename(folder, aside);
    try {
      await rename(staged, folder);
    } catch (error) {
      if (stands) await rename(aside, folder);
      throw error;
    }
    await flushFolder(dirname(folder));
    return stands ? await putAway(aside, folder, listing) : undefined;
  } finally {
    await rm(staged, { recursive: true, force: true });
  }
}

/** Ends a replacement that was cut off after the old folder lost its name; does nothing where none was. */
export async function recoveredFolder(folder: string, listing: Listing): Promise<void> {
  const aside = asideOf(folder);
  if (!(await isThere(aside))) return;
  if (await isThere(folder)) await putAway(aside, folder, listing);
  else await rename(aside, folder);
}

/** Ends every replacement in a folder that was cut off. */
export async function recoveredFolders(within: string, listing: Listing): Promise<void> {
  for (const name of await readdir(within)) {
    const folder = /^\.(.+)\.replaced$/.exec(name)?.[1];
    if (folder !== undefined) await recoveredFolder(join(within, folder), listing);
  }
}

/** Where the old folder stands while the new one takes its name. */
export function asideOf(folder: string): string {
  return join(dirname(folder), `.${basename(folder)}.replaced`);
}

async function putAway(aside: string, folder: string, listing: Listing): Promise<string | undefined> {
  if (await takeListedAway(aside, listing)) return undefined;
  let kept = `${folder}-kept`;
  for (let at = 2; await isThere(kept); at++) kept = `${folder}-kept-${at}`;
  await rename(aside, kept);
  return kept;
}

async function isThere(path: string): Promise<boolean> {
  return (await stat(path).catch(orNothing('ENOENT'))) !== undefined;
}

async function flushTree(folder: string): Promise<void> {
  for (const each of await readdir(folder, { withFileTypes: true })) {
    if (each.isDirectory()) await flushTree(join(folder, each.name));
  }
  await flushFolder(folder);
}
