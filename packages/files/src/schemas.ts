import { Broken, type Catalogue } from '@soundpost/core';
import { catalogueReader, catalogueVersion } from './catalogue-file.ts';
import { plantReader, plantVersion } from './plant-file.ts';
import { fileSchema } from './read-yaml.ts';
import type { JsonSchema } from './reader.ts';
import { recordsReader, recordsVersion } from './records-file.ts';
import { sharedSchema } from './shared-schema.ts';
import { storeReader, storeVersion } from './store-file.ts';
import { tedsLayoutReader } from './teds-layout-file.ts';

/** The schema of a plant file, JSON Schema draft 2020-12: what its reader says of every key. */
export function plantSchema(): JsonSchema {
  return sharedSchema(fileSchema(plantReader(noCatalogue), `Soundpost plant file, version ${plantVersion}`));
}

/** The schema of a catalogue file, JSON Schema draft 2020-12. */
export function catalogueSchema(): JsonSchema {
  return sharedSchema(fileSchema(catalogueReader, `Soundpost catalogue file, version ${catalogueVersion}`));
}

/** The schema of a file with a TEDS layout somebody copied down, JSON Schema draft 2020-12. */
export function tedsLayoutSchema(): JsonSchema {
  return sharedSchema(fileSchema(tedsLayoutReader, 'Soundpost TEDS layout file, version 1'));
}

/** The schema of a file that names recordings and says what they are, JSON Schema draft 2020-12. */
export function recordsSchema(): JsonSchema {
  return sharedSchema(fileSchema(recordsReader, `Soundpost records file, version ${recordsVersion}`));
}

/** The schema of a file of prices and stock, JSON Schema draft 2020-12. */
export function storeSchema(): JsonSchema {
  return sharedSchema(fileSchema(storeReader, `Soundpost store file, version ${storeVersion}`));
}

/** Every schema by the name of the file it is kept in. */
export const schemas: Readonly<Record<string, () => JsonSchema>> = {
  'plant.schema.json': plantSchema,
  'catalogue.schema.json': catalogueSchema,
  'teds-layout.schema.json': tedsLayoutSchema,
  'records.schema.json': recordsSchema,
  'store.schema.json': storeSchema,
};

/** The schema as it stands in its file. */
export function schemaText(schema: JsonSchema): string {
  return `${JSON.stringify(schema, null, 1)}\n`;
}

/** A schema says which names may stand there, not which parts they are. */
function noCatalogue(name: string): Catalogue {
  throw new Broken('no catalogue is looked up for a schema', { name });
}
