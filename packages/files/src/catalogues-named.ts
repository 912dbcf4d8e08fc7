import { Refusal } from '@soundpost/core';
import { entryOf } from './placed.ts';
import { textFile } from './text-file.ts';
import { placedYaml } from './yaml-document.ts';

/** The catalogue that ships: invented parts, none of them a product. */
export const genericCatalogue = 'generic';

/** What stands under `catalogues`; nothing where the file cannot be read, which its reader then says better. */
export function cataloguesNamed(bytes: Uint8Array, path: string): readonly string[] {
  try {
    const root = placedYaml(textFile(bytes, path));
    const list = root.kind === 'map' ? entryOf(root, 'catalogues')?.value : undefined;
    if (list?.kind !== 'list') return [];
    return list.elements.flatMap((each) => (each.kind === 'scalar' ? [each.source] : []));
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}
