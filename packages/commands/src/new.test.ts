import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { inMemory } from './in-memory.ts';
import { newThing } from './new.ts';
import { scaffolds } from './scaffold/scaffolds.ts';
import { checkout, done, flowing } from './testing/house.ts';

const core = 'packages/core/src';

/** The core, and what draws its kinds, in memory under the root they have there. */
function coreInMemory() {
  const files = [core, 'packages/documents/src']
    .flatMap((folder) => readdirSync(join(checkout, folder), { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => join(entry.parentPath, entry.name));
  return inMemory(
    Object.fromEntries(files.map((path) => [`house${path.slice(checkout.length)}`, readFileSync(path, 'utf8')])),
  );
}

test('outside a checkout nothing is begun', async () => {
  const outcome = await done(newThing, { kind: 'mount-kind', name: 'bayonet' }, inMemory({}));
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain('inside a checkout of the source only');
});

test('a name that is taken, or is no name, is refused and nothing is written', async () => {
  const world = coreInMemory();
  const before = world.files.size;
  for (const name of ['stud', 'Bayonet', 'bayonet mount', '../stud']) {
    const outcome = await done(newThing, { kind: 'mount-kind', name }, world);
    expect(outcome.exit, name).toBe(2);
  }
  expect(flowing(await done(newThing, { kind: 'mount-knd', name: 'bayonet' }, world))).toContain("'mount-kind'?");
  expect(world.files.size).toBe(before);
});

test('one line more in its list, at its place among the imports', async () => {
  const world = coreInMemory();
  const outcome = await done(newThing, { kind: 'mount-kind', name: 'bayonet' }, world);
  expect(outcome.exit).toBe(0);
  const list = new TextDecoder().decode(world.files.get(`house/${core}/chain/mount/kinds.ts`));
  expect(list).toMatch(/import \{ adhesivePad \}.*\nimport \{ bayonet \} from '\.\/bayonet\.ts';\n/);
  expect(list).toMatch(/mountKinds = kinds\([^)]*isolatingStud,\s*bayonet,?\s*\)/);
});

test('a kind begun has a drawing symbol and key fields, for nothing draws it otherwise', async () => {
  const world = coreInMemory();
  for (const kind of ['mount-kind', 'transducer-kind', 'machine-element']) {
    expect((await done(newThing, { kind, name: `begun-${kind}` }, world)).exit).toBe(0);
  }
  const written = (path: string) => new TextDecoder().decode(world.files.get(`house/packages/documents/src/${path}`));
  for (const path of ['chain/part-symbols.ts', 'chain/key-fields.ts']) {
    expect(written(path)).toMatch(/\n {2}'begun-mount-kind': .+,\n {2}'begun-transducer-kind': .+,\n\};/);
  }
  expect(written('machine/element-symbols.ts')).toContain("\n  'begun-machine-element': plainBody,\n};");
});

// Everything that can be begun, in a copy of the core: it must compile, keep to the format, and its tests must run.
const copy = mkdtempSync(join(tmpdir(), 'soundpost-new-'));

beforeAll(async () => {
  const world = coreInMemory();
  for (const { word } of scaffolds) {
    const outcome = await done(newThing, { kind: word, name: `begun-${word}` }, world);
    expect(outcome.exit, flowing(outcome)).toBe(0);
  }
  for (const [path, bytes] of world.files) {
    const target = join(copy, path.slice('house/'.length));
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, bytes);
  }
  for (const name of ['tsconfig.base.json', 'vitest.config.ts']) cpSync(join(checkout, name), join(copy, name));
  const biome = JSON.parse(readFileSync(join(checkout, 'biome.json'), 'utf8'));
  writeFileSync(join(copy, 'biome.json'), JSON.stringify({ ...biome, vcs: { enabled: false } }));
  writeFileSync(join(copy, 'package.json'), '{"type":"module"}');
  symlinkSync(join(checkout, 'node_modules'), join(copy, 'node_modules'));
});

afterAll(() => rmSync(copy, { recursive: true, force: true }));

const begun = () =>
  readdirSync(join(copy, core), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.name.startsWith('begun-'))
    .map((entry) => join(entry.parentPath, entry.name));

const lists = () =>
  scaffolds.flatMap((each) => each.lists({ kebab: 'x', camel: 'x', title: 'x' })).map(({ path }) => join(copy, path));

function output(program: string, parameters: readonly string[]): string {
  try {
    return execFileSync(join(copy, 'node_modules/.bin', program), parameters, { cwd: copy, encoding: 'utf8' });
  } catch (error) {
    const { stdout, stderr } = error as { stdout?: string; stderr?: string };
    return `failed\n${stdout ?? ''}${stderr ?? ''}`;
  }
}

test('what is begun keeps to the format of the house, and so do its lists', () => {
  const clean = (path: string) => !/^failed/.test(output('biome', ['check', path.replace(copy, checkout)]));
  const paths = [...begun(), ...lists().filter(clean)];
  expect(output('biome', ['check', '--error-on-warnings', ...paths])).not.toMatch(/^failed/);
});

test('what is begun compiles, and its tests run and pass', () => {
  const config = { extends: './tsconfig.base.json', compilerOptions: testOptions, include: begun() };
  writeFileSync(join(copy, 'tsconfig.json'), JSON.stringify(config));
  expect(output('tsc', ['-p', 'tsconfig.json'])).not.toMatch(/begun-/);
  const tests = begun().filter((path) => path.endsWith('.test.ts'));
  expect(tests.length).toBe(scaffolds.length);
  expect(output('vitest', ['run', '--root', copy, ...tests])).not.toMatch(/^failed/);
});

const testOptions = {
  composite: false,
  declaration: false,
  declarationMap: false,
  sourceMap: false,
  noEmit: true,
  types: ['node'],
  allowImportingTsExtensions: true,
  rewriteRelativeImportExtensions: false,
};
