import { type Catalogue, type Plant, Refusal, type Writing } from '@soundpost/core';
import { catalogueReader, cataloguesNamed, plantReader, readYaml, textFile, UnreadableFile } from '@soundpost/files';
import { folderOf, pathIn, type Surroundings } from '../surroundings.ts';
import { hex } from './content-hash.ts';
import { cataloguePath } from './read-plant.ts';

/** Everything that is stated of a plant, as text: its file, and each catalogue that file names. */
export interface StatedTexts {
  /** Where it was read: a plant file, or the folder of an issue. */
  readonly from: string;
  readonly plant: string;
  /** By the name the plant file calls it. */
  readonly catalogues: ReadonlyMap<string, string>;
  /** Of an issue: the revision it was issued as. */
  readonly revision?: string;
}

/** Where in the folder of an issue the texts stand that it was made from. */
export interface FrozenTexts {
  readonly plant: string;
  /** Path by the name the plant file calls the catalogue. */
  readonly catalogues: Readonly<Record<string, string>>;
}

const contentsName = 'contents.json';

/**
 * Reads a plant file with its catalogues, or what an issued folder was made from. Where an issue was cut off between
 * taking the name from the old folder and giving it to the new one, it is the old one that is read, and `from` names it.
 * Throws Refusal or UnreadableFile.
 */
export async function statedTexts(surroundings: Surroundings, path: string): Promise<StatedTexts> {
  surroundings.step(`reading ${path}`);
  const folder = path.endsWith(`/${contentsName}`) ? path.slice(0, -contentsName.length - 1) : path;
  const contents = await bytesIfThere(surroundings, pathIn(folder, contentsName));
  if (contents !== undefined) return ofIssue(surroundings, folder, contents);
  const aside = putAside(folder);
  const left = await bytesIfThere(surroundings, pathIn(aside, contentsName));
  if (left === undefined || (await bytesIfThere(surroundings, path)) !== undefined) {
    return ofPlantFile(surroundings, path);
  }
  surroundings.step(`reading ${aside}, which an issue that was cut off left under this name`);
  return ofIssue(surroundings, aside, left);
}

/** The name the store gives the old folder of an issue while the new one takes its place. The next issue undoes it. */
function putAside(folder: string): string {
  const bare = folder.replace(/[/\\]+$/, '');
  const name = bare.slice(Math.max(bare.lastIndexOf('/'), bare.lastIndexOf('\\')) + 1);
  return pathIn(folderOf(bare), `.${name}.replaced`);
}

/** The plant that texts state. Throws UnreadableFile where they state none. */
export function plantOf(texts: StatedTexts): Plant {
  return readTexts(texts).value;
}

/** How the plant file writes numbers. */
export function writingOf(texts: StatedTexts): Writing {
  return readTexts(texts).writing;
}

function readTexts({ from, plant, catalogues }: StatedTexts) {
  const encoder = new TextEncoder();
  const read = new Map<string, Catalogue>();
  for (const [name, text] of catalogues) read.set(name, readYaml(encoder.encode(text), name, catalogueReader).value);
  const reader = plantReader((name) => {
    const catalogue = read.get(name);
    if (catalogue === undefined) throw new Refusal({ read: name, expected: 'the name or path of a catalogue' });
    return catalogue;
  });
  return readYaml(encoder.encode(plant), from, reader);
}

/** The text with its own line ends and signs, once it is known to be one that can be read. */
function asWritten(bytes: Uint8Array, path: string): string {
  textFile(bytes, path);
  return new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
}

async function ofPlantFile(surroundings: Surroundings, path: string): Promise<StatedTexts> {
  const bytes = await surroundings.readBytes(path);
  const plant = asWritten(bytes, path);
  const catalogues = new Map<string, string>();
  for (const name of cataloguesNamed(bytes, path)) {
    const at = cataloguePath(surroundings, path, name);
    const found = await bytesIfThere(surroundings, at);
    if (found !== undefined) catalogues.set(name, asWritten(found, at));
  }
  return { from: path, plant, catalogues };
}

async function ofIssue(surroundings: Surroundings, folder: string, contents: Uint8Array): Promise<StatedTexts> {
  const { revision, stated, files } = contentsRead(folder, contents);
  if (stated === undefined) {
    throw new Refusal({
      read: `${folder}, an issue that does not hold what it was made from`,
      expected: 'an issue with the plant file it was made from, or a plant file',
      suggestion: 'Give the plant file of that revision instead.',
    });
  }
  const frozen = async (name: string): Promise<string> => {
    const bytes = await surroundings.readBytes(pathIn(folder, name));
    if ((await sha256(bytes)) !== files.get(name)) {
      throw new Refusal({
        read: `${name} in ${folder}, which is not as it was issued`,
        expected: 'the file whose hash stands in contents.json',
        suggestion: 'Take the folder of the issue from where it is kept unchanged.',
      });
    }
    return asWritten(bytes, pathIn(folder, name));
  };
  const catalogues = new Map<string, string>();
  for (const [name, path] of Object.entries(stated.catalogues)) catalogues.set(name, await frozen(path));
  return { from: folder, plant: await frozen(stated.plant), catalogues, revision };
}

interface IssueContents {
  readonly revision: string;
  readonly stated: FrozenTexts | undefined;
  readonly files: ReadonlyMap<string, string>;
}

function contentsRead(folder: string, bytes: Uint8Array): IssueContents {
  try {
    const read = JSON.parse(new TextDecoder().decode(bytes)) as {
      readonly soundpost: unknown;
      readonly revision: unknown;
      readonly stated?: FrozenTexts;
      readonly files: readonly { readonly path: string; readonly sha256: string }[];
    };
    if (read.soundpost !== 'issue') throw new SyntaxError();
    const { stated } = read;
    return {
      revision: String(read.revision),
      stated: stated === undefined ? undefined : { plant: inside(stated.plant), catalogues: paths(stated.catalogues) },
      files: new Map(read.files.map((each) => [String(each.path), String(each.sha256)])),
    };
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal({
      read: `${contentsName} in ${folder}`,
      expected: 'the contents of an issue, as `issue` writes them',
    });
  }
}

function paths(catalogues: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(catalogues).map(([name, path]) => [name, inside(path)]));
}

/** What a list of contents names is read in its own folder and nowhere else. */
function inside(path: unknown): string {
  if (typeof path === 'string' && /^stated\/[a-z0-9-]+\.yaml$/.test(path)) return path;
  throw new Refusal({ read: String(path), expected: 'a file in the folder of the issue' });
}

async function sha256(bytes: Uint8Array): Promise<string> {
  return hex(await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>));
}

async function bytesIfThere(surroundings: Surroundings, path: string): Promise<Uint8Array | undefined> {
  try {
    return await surroundings.readBytes(path);
  } catch (error) {
    if (error instanceof Refusal && !(error instanceof UnreadableFile)) return undefined;
    throw error;
  }
}
