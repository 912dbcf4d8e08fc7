import { createHash } from 'node:crypto';
import { readdir, readFile, rmdir, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';

/** The file of a folder that lists what belongs to it, as `{ "files": [{ "path", "sha256" }] }`. */
export type Listing = string;

/**
 * Takes away what a folder lists and what is as it was listed, the listing last, and what is empty then. Says whether
 * nothing is left: what is left is somebody's own.
 */
export async function takeListedAway(folder: string, listing: Listing): Promise<boolean> {
  const listed = await listedIn(folder, listing);
  for (const path of await filesBelow(folder)) {
    if (path === listing || !listed.has(path)) continue;
    const hash = createHash('sha256').update(await readFile(join(folder, path)));
    if (hash.digest('hex') === listed.get(path)) await unlink(join(folder, path));
  }
  const left = (await filesBelow(folder)).filter((path) => path !== listing);
  if (left.length > 0) return false;
  if (await stat(join(folder, listing)).catch(() => undefined)) await unlink(join(folder, listing));
  await takeEmptyAway(folder);
  return true;
}

async function listedIn(folder: string, listing: Listing): Promise<ReadonlyMap<string, string>> {
  try {
    const read = JSON.parse(await readFile(join(folder, listing), 'utf8')) as {
      readonly files: readonly { readonly path: unknown; readonly sha256: unknown }[];
    };
    return new Map(read.files.map(({ path, sha256 }) => [String(path), String(sha256)]));
  } catch {
    return new Map();
  }
}

/** Every file below a folder, by its path from there with slashes. */
async function filesBelow(folder: string, from = ''): Promise<readonly string[]> {
  const entries = await readdir(join(folder, from), { withFileTypes: true });
  const found: string[] = [];
  for (const each of entries) {
    const path = from === '' ? each.name : `${from}/${each.name}`;
    if (each.isDirectory()) found.push(...(await filesBelow(folder, path)));
    else found.push(path);
  }
  return found;
}

async function takeEmptyAway(folder: string): Promise<void> {
  for (const each of await readdir(folder, { withFileTypes: true })) await takeEmptyAway(join(folder, each.name));
  await rmdir(folder);
}
