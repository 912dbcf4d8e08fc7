import { readdir, readFile, realpath } from 'node:fs/promises';
import { dirname, join, resolve, sep } from 'node:path';
import { statedTexts } from '@soundpost/commands';
import { Refusal } from '@soundpost/core';
import { recoveredFolders } from '@soundpost/store';
import { issueSurroundings } from './issue-surroundings.ts';
import type { IssuedRevision, IssuedRevisions, IssuedTexts } from './protocol.ts';

const listing = 'contents.json';

/** A folder beside the plant by its plain name. Throws Refusal for anything else. */
export function besidePlant(plant: string, folder: string): string {
  if (/^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,79}$/u.test(folder) && !folder.endsWith('.')) {
    return join(dirname(resolve(plant)), folder);
  }
  throw new Refusal({ read: `the folder '${folder}'`, expected: 'a plain name of a folder beside the plant file' });
}

/** The revisions that stand in a folder beside the plant; what was cut off is put right first. */
export async function issuedRevisions(plant: string, folder: string): Promise<IssuedRevisions> {
  const path = besidePlant(plant, folder);
  const names = await readdir(path).catch(() => []);
  if (names.length > 0) await recoveredFolders(path, listing);
  const revisions: IssuedRevision[] = [];
  for (const name of await readdir(path).catch(() => [])) {
    const read = name.startsWith('revision-') ? await revisionIn(join(path, name), name) : undefined;
    if (read !== undefined) revisions.push(read);
  }
  const inOrder = (a: IssuedRevision, b: IssuedRevision) =>
    a.revision.localeCompare(b.revision, 'en', { numeric: true });
  return { folder, path, revisions: revisions.sort(inOrder) };
}

async function revisionIn(path: string, name: string): Promise<IssuedRevision | undefined> {
  try {
    const read = JSON.parse(await readFile(join(path, listing), 'utf8')) as IssuedRevision & { soundpost: string };
    if (read.soundpost !== 'issue' || !Array.isArray(read.files)) return undefined;
    const { revision, date, contentHash, preliminary, files } = read;
    return { name, revision, date, contentHash, preliminary, files };
  } catch {
    return undefined;
  }
}

export async function issuedTexts(plant: string, folder: string, name: string): Promise<IssuedTexts> {
  const path = revisionPath(plant, folder, name);
  const {
    plant: text,
    catalogues,
    revision = '',
  } = await statedTexts(
    issueSurroundings(() => undefined),
    path,
  );
  return { plant: text, catalogues: [...catalogues], revision };
}

/** A file that the contents of a revision list, or the contents themselves; undefined where there is none. */
export async function issuedFile(
  plant: string,
  folder: string,
  name: string,
  file: string,
): Promise<Uint8Array | undefined> {
  const path = revisionPath(plant, folder, name);
  const revision = await revisionIn(path, name);
  if (file !== listing && revision?.files.some((each) => each.path === file) !== true) return undefined;
  try {
    const root = await realpath(path);
    const found = await realpath(join(root, file));
    return found.startsWith(root + sep) ? await readFile(found) : undefined;
  } catch {
    return undefined;
  }
}

function revisionPath(plant: string, folder: string, name: string): string {
  if (!/^revision-[A-Za-z0-9_-]{1,40}$/.test(name)) {
    throw new Refusal({ read: name, expected: 'the folder of a revision' });
  }
  return join(besidePlant(plant, folder), name);
}
