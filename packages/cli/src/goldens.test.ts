import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { commands, inMemory, manner, performed, textOf, type Wishes } from '@soundpost/commands';
import { expect, test } from 'vitest';
import { commandHelp, generalHelp } from './help.ts';

// Our own output, for people to review; what is right is proven elsewhere. UPDATE_GOLDENS=1 writes it anew.
const root = resolve(import.meta.dirname, '../../..');
const folder = join(root, 'goldens/cli');
const update = process.env.UPDATE_GOLDENS === '1';

const files = [
  'packages/files/catalogues/generic.yaml',
  'examples/raw-water-pump/plant.yaml',
  'examples/solvent-recovery/plant.yaml',
  'examples/uncertainty/end-gauge.yaml',
];
const plant = 'examples/raw-water-pump/plant.yaml';
const provenPlant = 'examples/solvent-recovery/plant.yaml';
const blockedPlant = 'blocked.yaml';
const brokenPlant = 'broken.yaml';

function world() {
  const text = (path: string) => readFileSync(join(root, path), 'utf8');
  return inMemory({
    ...Object.fromEntries(
      files.flatMap((path) => [
        [path, text(path)],
        [`house/${path}`, text(path)],
      ]),
    ),
    [blockedPlant]: text(plant).replace('mount: stud', 'mount: magnet-2pole').replace('value: 85 m', 'value: 850 m'),
    [brokenPlant]: text(plant)
      .replace('poles: { value: 4,', 'poles: { value: four,')
      .replace('rotor-bars', 'rotor-bar'),
  });
}

interface Golden {
  readonly name: string;
  readonly command: string;
  readonly given: Readonly<Record<string, unknown>>;
  readonly wishes?: Wishes;
}

const point = 'pump-drive-end-horizontal';
const goldens: readonly Golden[] = [
  { name: 'demand', command: 'demand', given: { plant } },
  {
    name: 'demand-us',
    command: 'demand',
    given: { plant, point: 'pump-drive-end-loop' },
    wishes: { units: 'us', decimal: 'comma' },
  },
  { name: 'shortlist', command: 'shortlist', given: { plant, point } },
  {
    name: 'shortlist-mounts',
    command: 'shortlist',
    given: { plant, point, transducers: ['ACC-100', 'PVT-4', 'LPV-25'], mounts: ['stud', 'magnet-flat'], all: true },
  },
  { name: 'prove', command: 'prove', given: { plant } },
  { name: 'prove-proven', command: 'prove', given: { plant: provenPlant } },
  { name: 'prove-blocked', command: 'prove', given: { plant: blockedPlant } },
  { name: 'prove-broken', command: 'prove', given: { plant: brokenPlant } },
  { name: 'explain-point', command: 'explain', given: { words: [plant, point, 'bearing bursts'] } },
  { name: 'explain-loop', command: 'explain', given: { words: [plant, 'pump-drive-end-loop'] } },
  { name: 'explain-rule', command: 'explain', given: { words: ['chain/overload'] } },
  { name: 'explain-kind', command: 'explain', given: { words: ['rolling-bearing'] } },
  { name: 'workings', command: 'workings', given: {} },
  {
    name: 'work-bearing',
    command: 'work',
    given: {
      name: 'rolling-bearing-frequencies',
      inputs: [
        'elements=9',
        'element-diameter=0.3126 in',
        'pitch-diameter=1.537 in',
        'contact-angle=0 deg',
        'shaft-speed=1797 r/min',
      ],
    },
  },
  {
    name: 'work-budget',
    command: 'work',
    given: { name: 'uncertainty-budget', inputs: ['file=examples/uncertainty/end-gauge.yaml'] },
  },
  { name: 'doctor', command: 'doctor', given: {} },
  { name: 'demo', command: 'demo', given: {} },
];

async function output({ command: name, given, wishes }: Golden): Promise<string> {
  const command = commands.find((each) => each.name === name)!;
  const { exit, lines } = await performed(command, world(), given, manner(wishes));
  return `${textOf(lines)}\n\nexit ${exit}\n`;
}

function compare(name: string, text: string): void {
  const path = join(folder, `${name}.txt`);
  if (update) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(path, text);
    return;
  }
  expect(existsSync(path) ? readFileSync(path, 'utf8') : '', `${name}: npm run goldens writes it anew`).toBe(text);
}

test.each(goldens.map((each) => [each.name, each] as const))('golden: %s', async (name, each) => {
  compare(name, await output(each));
});

test('golden: help', () => {
  const all = [generalHelp(commands, '0.0.0'), ...commands.map(commandHelp)];
  compare('help', `${all.map(textOf).join('\n\n---\n\n')}\n`);
});

test('no golden is left over from a command that is gone', () => {
  const known = [...goldens.map((each) => each.name), 'help'].map((name) => `${name}.txt`).sort();
  expect(existsSync(folder) ? readdirSync(folder).sort() : []).toEqual(known);
});
