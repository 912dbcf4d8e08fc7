import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { plant } from './example-plant.ts';
import { UnreadableFile } from './file-refusal.ts';
import { plainOf } from './placed.ts';
import { fileSchema, readYaml } from './read-yaml.ts';
import { bytesOf } from './refused.ts';
import { textFile } from './text-file.ts';
import { placedYaml } from './yaml-document.ts';

/**
 * One description gives the reader and the JSON Schema, so both must say the same of a file, up to what a schema cannot
 * know. The verdicts on the schema come from another program (evidence/json-schema/generate.py).
 */
const folder = new URL('../../../evidence/json-schema/', import.meta.url);

const machine = (lines: string) => `machines: {P-301: {title: Pump, duty: running, running-speed: 1486 r/min${lines}}}`;
const sensor = (lines: string) => `machines: {}\nsensors: {S-1: {${lines}}}`;

const accepted = {
  'no machines': 'machines: {}',
  'a machine': machine(''),
  'every key': machine(', speed-range: 750..1500 r/min, vanes: 6, notes: [a], power: 160 kW, slip: 0.9 %'),
  'declared decimals': `decimals: comma\n${machine(', power: "1,5 kW"')}`,
  'tag-like texts': 'machines: {012: {title: 012, duty: standby, running-speed: unknown, notes: [1.50, true]}}',
  'a number in quotes': machine(', vanes: "6"'),
  'unknown alone': machine(', power: unknown'),
  'a value with its origin': machine(', power: {value: 160 kW, status: nameplate, source: photo 12}'),
  'unknown with bounds': machine(', power: {unknown: true, ask: the maker, between: [150 kW, 170 kW]}'),
  'a value that is unknown': machine(', power: {value: unknown, ask: the maker}'),
  'a moving coil': sensor('kind: moving-coil, sensitivity: 20 mV/(mm/s)'),
  'a curve': sensor('kind: moving-coil, noise: {1 Hz: 30 nm/s/rtHz}'),
  'a curve with its origin': sensor('kind: moving-coil, noise: {value: {1 Hz: 30 nm/s/rtHz}, status: data sheet}'),
  'an accelerometer': sensor('kind: accelerometer, isolated: no, price: 300'),
};

const refusedByBoth = {
  'a list': '- a',
  nothing: '',
  'no machines at all': 'sensors: {}',
  'an unknown key': machine(', pwer: 160 kW'),
  'a missing key': 'machines: {P-301: {title: Pump, duty: running}}',
  'a wrong choice': machine(', duty2: x').replace('duty: running', 'duty: runing'),
  'a choice in capitals': machine('').replace('running,', 'Running,'),
  'a bare number': machine(', power: 160'),
  'a fraction of a vane': machine(', vanes: 5.5'),
  'no vane': machine(', vanes: 0'),
  'too many notes': machine(', notes: [a, b, c, d]'),
  'a text instead of a list': machine(', notes: a'),
  'a name with a slash': 'machines: {P/1: {title: Pump, duty: running, running-speed: unknown}}',
  'both value and unknown': machine(', power: {value: 160 kW, unknown: true}'),
  'unknown with a source': machine(', power: {unknown: true, source: photo}'),
  'value with ask': machine(', power: {value: 160 kW, ask: the maker}'),
  'a wrong status': machine(', power: {value: 160 kW, status: guessed}'),
  'one bound': machine(', power: {unknown: true, between: [1 kW]}'),
  'no kind': sensor('sensitivity: 20 mV/(mm/s)'),
  'a wrong kind': sensor('kind: moving-coils'),
  'the sheet of another kind': sensor('kind: moving-coil, isolated: yes'),
  'a yes that is none': sensor('kind: accelerometer, isolated: perhaps'),
  'decimals otherwise': `decimals: dot\n${machine('')}`,
};

/** What takes units and comparison to see. */
const refusedByTheReaderAlone = {
  'a wrong unit': machine(', power: 160 A'),
  'no detector': machine(', limit: 4.5 mm/s'),
  'exchanged bounds': machine(', power: {unknown: true, between: [2 kW, 1 kW]}'),
  'an empty text': machine('').replace('Pump', '""'),
};

const groups = { accepted, refusedByBoth, refusedByTheReaderAlone };

function isRead(yaml: string): boolean {
  try {
    readYaml(bytesOf(yaml), 'plant.yaml', plant);
    return true;
  } catch (error) {
    if (error instanceof UnreadableFile) return false;
    throw error;
  }
}

const documents = Object.fromEntries(
  Object.values(groups).flatMap((group) =>
    Object.entries(group).map(([name, yaml]) => [name, plainOf(placedYaml(textFile(bytesOf(yaml), 'plant.yaml')))]),
  ),
);

/** Words for people do not bear on the verdicts, and change more often than they. */
const withoutProse = (key: string, value: unknown) => (['description', 'examples'].includes(key) ? undefined : value);
const written = `${JSON.stringify({ schema: fileSchema(plant, 'A plant'), documents }, withoutProse, 1)}\n`;

test('golden: the schema and the documents it is tried on; with -u they are written anew, then run its generate.py', async () => {
  await expect(written).toMatchFileSnapshot(fileURLToPath(new URL('documents.json', folder)));
});

test('every key of the schema is explained to the one who types it', () => {
  const unexplained: string[] = [];
  const look = (schema: unknown, path: string): void => {
    if (typeof schema !== 'object' || schema === null) return;
    for (const [key, each] of Object.entries((schema as { properties?: object }).properties ?? {})) {
      if (typeof each === 'object' && JSON.stringify(each).includes('"description"') === false)
        unexplained.push(`${path}/${key}`);
    }
    for (const [key, each] of Object.entries(schema)) look(each, `${path}/${key}`);
  };
  look(fileSchema(plant, 'A plant'), '');
  // Inside a statement the value is explained by the whole; 'unknown' is a constant.
  expect(unexplained.filter((path) => !/anyOf\/\d\/(value|unknown)$|\/if\/kind$/.test(path))).toEqual([]);
});

interface Verdicts {
  readonly madeBy: string;
  readonly of: string;
  readonly schemaIsValid: boolean;
  readonly accepted: Readonly<Record<string, boolean>>;
}

const verdicts = JSON.parse(readFileSync(new URL('verdicts.json', folder), 'utf8')) as Verdicts;

test('independent: the schema is one of draft 2020-12, as the jsonschema library for Python says', () => {
  expect(verdicts.of).toBe(createHash('sha256').update(written).digest('hex'));
  expect(verdicts.schemaIsValid).toBe(true);
});

test.each(Object.keys(accepted))('independent: reader and schema both accept: %s', (name) => {
  expect(isRead(accepted[name as keyof typeof accepted])).toBe(true);
  expect(verdicts.accepted[name]).toBe(true);
});

test.each(Object.keys(refusedByBoth))('independent: reader and schema both refuse: %s', (name) => {
  expect(isRead(refusedByBoth[name as keyof typeof refusedByBoth])).toBe(false);
  expect(verdicts.accepted[name]).toBe(false);
});

test.each(Object.keys(refusedByTheReaderAlone))('the reader sees more than a schema can: %s', (name) => {
  expect(isRead(refusedByTheReaderAlone[name as keyof typeof refusedByTheReaderAlone])).toBe(false);
  expect(verdicts.accepted[name]).toBe(true);
});
