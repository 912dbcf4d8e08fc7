import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Design, design, type Plant } from '@soundpost/core';
import { type DocumentRecord, documentRecord, issuedKinds, issueFacts } from '@soundpost/documents/document-set';
import { catalogueReader, plantReader, readYaml } from '@soundpost/files';

const root = resolve(import.meta.dirname, '../../../..');
const read = (path: string) => readFileSync(resolve(root, path));
const generic = readYaml(read('packages/files/catalogues/generic.yaml'), 'generic.yaml', catalogueReader).value;

/** The plant files of the examples. */
export const exampleNames: readonly string[] = readdirSync(resolve(root, 'examples')).filter((name) =>
  existsSync(resolve(root, 'examples', name, 'plant.yaml')),
);

export function examplePlant(name: string): Plant {
  return readYaml(
    read(`examples/${name}/plant.yaml`),
    'plant.yaml',
    plantReader(() => generic),
  ).value;
}

export function recordsOf(of: Design): readonly DocumentRecord[] {
  const facts = issueFacts(of, { contentHash: 'a1b2c3d4e5f60718293a4b5c6d7e8f90' });
  return issuedKinds.flatMap((kind) => documentRecord(kind, of, facts) ?? []);
}

/** Every document of a plant of the examples, with its design. */
export function exampleRecords(name: string): { readonly of: Design; readonly records: readonly DocumentRecord[] } {
  const of = design(examplePlant(name), 1);
  return { of, records: recordsOf(of) };
}
