import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { realSurroundings } from '../../packages/cli/src/real-surroundings.ts';
import { issue } from '../../packages/commands/src/issue.ts';
import { manner } from '../../packages/commands/src/manner.ts';
import { performed } from '../../packages/commands/src/performed.ts';
import { prove } from '../../packages/commands/src/prove.ts';
import { generatedPlant } from './plant.mjs';

const folder = mkdtempSync(join(tmpdir(), 'soundpost-set-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = (name: string) => join(folder, name);

interface Result {
  readonly points: number;
  readonly compared: Readonly<Record<string, number>>;
  readonly faults: readonly string[];
  readonly faultsInAll: number;
}

function absent(): boolean {
  return ['pdftotext', 'python3'].some((each) => spawnSync(each, ['-v']).error !== undefined);
}

function readBack(): Result {
  const { stdout } = spawnSync(
    'python3',
    [join(import.meta.dirname, 'read_issue.py'), path('out/revision-A'), path('design.json'), path('plant.yaml')],
    { encoding: 'utf8' },
  );
  return JSON.parse(stdout) as Result;
}

test.skipIf(absent())(
  'independent: twenty points issued whole say what the design says, as poppler and another reader of workbooks read them; a slip is seen',
  async () => {
    writeFileSync(path('plant.yaml'), generatedPlant(20));
    const surroundings = realSurroundings(() => {});
    const plant = path('plant.yaml');
    const proven = await performed(prove, surroundings, { plant }, manner());
    writeFileSync(path('design.json'), JSON.stringify(proven.json));
    expect((await performed(issue, surroundings, { plant, out: path('out'), preliminary: false }, manner())).exit).toBe(
      0,
    );
    const { points, compared, faults } = readBack();
    expect(faults).toEqual([]);
    expect(points).toBe(20);
    for (const [what, count] of Object.entries(compared)) expect(count, what).toBeGreaterThan(10);

    const slipped = JSON.stringify(proven.json)
      .replace(/"because":"C\/D/, '"because":"D/C')
      .replace(/"transducer":"ACC-100"/, '"transducer":"ACC-101"');
    writeFileSync(path('design.json'), slipped);
    expect(readBack().faultsInAll).toBeGreaterThanOrEqual(2);
  },
);

test('law: the same seed gives the same plant, of as many points as asked for', () => {
  expect(generatedPlant(33, 7)).toBe(generatedPlant(33, 7));
  expect(generatedPlant(33, 7)).not.toBe(generatedPlant(33, 8));
  expect(generatedPlant(33).match(/^ {8}location:/gm)).toHaveLength(33);
  expect(execFileSync('node', [join(import.meta.dirname, 'plant.mjs'), '33'], { encoding: 'utf8' })).toBe(
    generatedPlant(33),
  );
});

test('independent: the stored result of five hundred points holds no fault', () => {
  const result = JSON.parse(readFileSync(join(import.meta.dirname, 'result.json'), 'utf8')) as Result;
  expect(result).toMatchObject({ points: 500, faults: [], faultsInAll: 0 });
});
