import { chmod, link, open, readFile, realpath, rename, stat, unlink } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { unfinishedName } from './unfinished-file.ts';

/** What a file holds, whole or piece by piece. */
export type Content = string | Uint8Array | Iterable<string>;

/** Whether a file that stands there already may be replaced. */
export interface Replacing {
  readonly overwrite: boolean;
  /** What is to be replaced; where something else stands there by then, nothing is (ECHANGED). */
  readonly from?: Uint8Array;
}

/**
 * Writes a file as a whole: into a new file beside it, which is flushed to the disk before it takes the name; then the
 * folder is flushed. Whenever the process or the machine stops, there stands the old content or the new. Without
 * `overwrite` a name that is taken is left alone (EEXIST), also when another process takes it meanwhile. With
 * `from` the file is compared once more when the new one is on the disk already, so that between the look and the
 * renaming nothing is left but the two calls. A link is followed; the permissions of a file that is replaced are kept.
 * Throws the errors of the file system.
 */
export async function replaceWhole(path: string, content: Content, { overwrite, from }: Replacing): Promise<void> {
  const target = overwrite ? await followed(path) : path;
  const folder = dirname(target);
  const unfinished = join(folder, unfinishedName());
  const before = overwrite ? await stat(target).catch(orNothing('ENOENT')) : undefined;
  try {
    await writeThrough(unfinished, content);
    if (before !== undefined) await chmod(unfinished, before.mode & 0o7777);
    if (from !== undefined) await refuseChanged(target, from);
    if (overwrite) await rename(unfinished, target);
    else await linkOnce(unfinished, target);
  } catch (error) {
    await unlink(unfinished).catch(orNothing('ENOENT'));
    throw error;
  }
  await flushFolder(folder);
}

async function refuseChanged(target: string, from: Uint8Array): Promise<void> {
  const stands = await readFile(target).catch(orNothing('ENOENT'));
  if (stands?.equals(from) === true) return;
  throw Object.assign(new Error(`another program changed ${target}`), { code: 'ECHANGED' });
}

async function followed(path: string): Promise<string> {
  return (await realpath(path).catch(orNothing('ENOENT'))) ?? path;
}

async function writeThrough(path: string, content: Content): Promise<void> {
  const file = await open(path, 'wx');
  try {
    if (typeof content === 'string' || content instanceof Uint8Array) await file.writeFile(content);
    else for (const piece of content) await file.writeFile(piece);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Gives the file its name unless it is taken; the check and the naming are one step. */
async function linkOnce(unfinished: string, target: string): Promise<void> {
  try {
    await link(unfinished, target);
  } catch (error) {
    // File systems without links (FAT, some shares): the check and the naming are two steps there.
    if (!['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'].includes(codeOf(error))) throw error;
    if ((await stat(target).catch(orNothing('ENOENT'))) !== undefined) {
      throw Object.assign(new Error(`the name is taken: ${target}`), { code: 'EEXIST' });
    }
    await rename(unfinished, target);
    return;
  }
  await unlink(unfinished);
}

/** Flushes the folder's list of names. Windows and some shares have no such call, and keep the list by themselves. */
export async function flushFolder(folder: string): Promise<void> {
  try {
    const handle = await open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (!['EPERM', 'EISDIR', 'EACCES', 'EINVAL', 'ENOTSUP'].includes(codeOf(error))) throw error;
  }
}

export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

export function orNothing(code: string): (error: unknown) => undefined {
  return (error) => {
    if (codeOf(error) !== code) throw error;
    return undefined;
  };
}
