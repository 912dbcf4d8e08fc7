import { type Catalogue, type Plant, Refusal, type Writing } from '@soundpost/core';
import { catalogueReader, cataloguesNamed, genericCatalogue, plantReader, readYaml } from '@soundpost/files';
import { folderOf, isAbsolutePath, pathIn, type Surroundings } from '../surroundings.ts';

/** A plant as its file states it, and the folder its paths start from. */
export interface ReadPlant {
  readonly path: string;
  readonly plant: Plant;
  readonly writing: Writing;
}

export function genericCataloguePath(surroundings: Surroundings): string {
  return pathIn(surroundings.root, 'packages', 'files', 'catalogues', 'generic.yaml');
}

/** Reads a plant file with the catalogues it names. Throws UnreadableFile or Refusal. */
export async function readPlant(surroundings: Surroundings, path: string): Promise<ReadPlant> {
  surroundings.step(`reading ${path}`);
  const bytes = await surroundings.readBytes(path);
  const catalogues = new Map<string, Catalogue | Refusal>();
  for (const name of cataloguesNamed(bytes, path)) catalogues.set(name, await found(surroundings, path, name));
  const { value, writing } = readYaml(
    bytes,
    path,
    plantReader((name) => {
      const catalogue = catalogues.get(name);
      if (catalogue === undefined) throw new Refusal({ read: name, expected: 'the name or path of a catalogue' });
      if (catalogue instanceof Refusal) throw catalogue;
      return catalogue;
    }),
  );
  return { path, plant: value, writing };
}

/** A catalogue that is not there is refused where the plant names it; one that cannot be read, where it is wrong. */
async function found(surroundings: Surroundings, plantPath: string, name: string): Promise<Catalogue | Refusal> {
  const path = cataloguePath(surroundings, plantPath, name);
  try {
    const bytes = await surroundings.readBytes(path);
    return readYaml(bytes, path, catalogueReader).value;
  } catch (error) {
    if (error instanceof Refusal && error.constructor === Refusal) return error;
    throw error;
  }
}

export function cataloguePath(surroundings: Surroundings, plantPath: string, name: string): string {
  if (name === genericCatalogue) return genericCataloguePath(surroundings);
  return isAbsolutePath(name) ? name : pathIn(folderOf(plantPath), name);
}
