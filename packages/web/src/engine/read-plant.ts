import { type Catalogue, type Plant, Refusal } from '@soundpost/core';
import { catalogueReader, plantReader, readYaml } from '@soundpost/files';
import type { PlantOnDisk } from '@soundpost/server/protocol';

export type CatalogueTexts = PlantOnDisk['catalogues'];

const read = new Map<string, Catalogue>();

function catalogueFrom({ path, text }: CatalogueTexts[string]): Catalogue {
  const before = read.get(text);
  if (before !== undefined) return before;
  const { value } = readYaml(new TextEncoder().encode(text), path, catalogueReader);
  read.set(text, value);
  return value;
}

/** Reads a plant from its text. Throws UnreadableFile or Refusal, in words with line and column. */
export function plantFrom(text: string, path: string, catalogues: CatalogueTexts): Plant {
  const reader = plantReader((name) => {
    const found = catalogues[name];
    if (found === undefined) {
      const names = Object.keys(catalogues).join(', ');
      throw new Refusal({
        read: name,
        expected: `a catalogue that is open here: ${names}`,
        suggestion: 'Reload the page to open it.',
      });
    }
    return catalogueFrom(found);
  });
  return readYaml(new TextEncoder().encode(text), path, reader).value;
}
