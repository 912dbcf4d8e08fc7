import {
  catalogueSchema,
  plantSchema,
  recordsSchema,
  schemaText,
  storeSchema,
  tedsLayoutSchema,
} from '@soundpost/files';
import { always, argument, command } from './command.ts';
import { plainLines } from './layout/line.ts';
import { unknownName } from './plant/point-called.ts';

const schemas = {
  plant: plantSchema,
  catalogue: catalogueSchema,
  'teds-layout': tedsLayoutSchema,
  records: recordsSchema,
  store: storeSchema,
} as const;

export const schema = command({
  name: 'schema',
  summary: 'The JSON Schema of a plant, catalogue, records, store or TEDS layout file',
  description:
    'Prints the JSON Schema (2020-12) of a file, made from the same definitions that read it. Save it beside your files ' +
    'and name it in the first line, so that an editor completes keys and marks mistakes while you type.',
  arguments: { file: argument('plant|catalogue|records|store|teds-layout', 'Which file') },
  flags: {},
  examples: ['soundpost schema plant > plant.schema.json', 'soundpost schema catalogue > catalogue.schema.json'],
  whenAllowed: always,
  async perform(_surroundings, { file }) {
    if (!Object.hasOwn(schemas, file)) throw unknownName(file, 'a kind of file', Object.keys(schemas));
    const json = schemas[file as keyof typeof schemas]();
    return { exit: 0, lines: plainLines(schemaText(json).trimEnd().split('\n')), json };
  },
});
