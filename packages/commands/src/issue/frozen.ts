import { type Design, questions } from '@soundpost/core';
import { cataloguesNamed } from '@soundpost/files';
import { designJsonInPieces } from '../json/design-json.ts';
import type { FrozenTexts } from '../plant/stated-texts.ts';
import { seed } from '../seed.ts';
import type { IssuedFile } from './set-contents.ts';

/**
 * What freezes a revision: the plant file and every catalogue byte for byte as they were read, and the record all
 * documents are views of. `read`: the plant file, then its catalogues in the order in which it names them.
 */
export function frozenFiles(
  design: Design,
  read: readonly Uint8Array[],
): { readonly stated: FrozenTexts; readonly files: readonly IssuedFile[] } {
  const [plant, ...catalogues] = read;
  const names = cataloguesNamed(plant!, 'plant.yaml').slice(0, catalogues.length);
  const paths = names.map((_, place) => `stated/catalogue-${place + 1}.yaml`);
  const more = { questions: questions(design) };
  return {
    stated: {
      plant: 'stated/plant.yaml',
      catalogues: Object.fromEntries(names.map((name, place) => [name, paths[place]!])),
    },
    files: [
      { path: 'stated/plant.yaml', title: 'The plant file as issued', content: plant! },
      ...names.map((name, place) => ({
        path: paths[place]!,
        title: `Catalogue '${name}' as issued`,
        content: catalogues[place]!,
      })),
      {
        path: 'design.json',
        title: 'The design as issued, for programs',
        content: designJsonInPieces(design, seed, more),
      },
    ],
  };
}
