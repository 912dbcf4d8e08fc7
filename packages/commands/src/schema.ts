import { type Catalogue, Refusal } from '@soundpost/core';
import { catalogueReader, catalogueVersion, fileSchema, plantReader, plantVersion } from '@soundpost/files';
import { always, argument, command } from './command.ts';
import { plainLines } from './layout/line.ts';
import { unknownName } from './plant/point-called.ts';

const noCatalogue = (name: string): Catalogue => {
  throw new Refusal({ read: name, expected: 'a catalogue' });
};

const schemas: Readonly<Record<string, () => unknown>> = {
  plant: () => fileSchema(plantReader(noCatalogue), `Soundpost plant file, version ${plantVersion}`),
  catalogue: () => fileSchema(catalogueReader, `Soundpost catalogue file, version ${catalogueVersion}`),
};

export const schema = command({
  name: 'schema',
  summary: 'The JSON Schema of a plant or catalogue file, for editors',
  description:
    'Prints the JSON Schema (2020-12) of a file, made from the same definitions that read it. Save it beside your files ' +
    'and name it in the first line, so that an editor completes keys and marks mistakes while you type.',
  arguments: { file: argument('plant|catalogue', 'Which file') },
  flags: {},
  examples: ['soundpost schema plant > plant.schema.json', 'soundpost schema catalogue > catalogue.schema.json'],
  whenAllowed: always,
  async perform(_surroundings, { file }) {
    const made = schemas[file];
    if (made === undefined) throw unknownName(file, 'a kind of file', Object.keys(schemas));
    const json = made();
    return { exit: 0, lines: plainLines(JSON.stringify(json, null, 2).split('\n')), json };
  },
});
