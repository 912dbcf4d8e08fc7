import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { expect, test } from 'vitest';
import * as core from '../packages/core/src/index.ts';
import { root } from './reading.ts';

/** Nothing is believed on our own word: each kind, rule and working is held against somebody else, or is listed as not. */
const { evidenceList, evidenceSubjects, lackingEvidence, printedNumbers, workings } = core;

interface Lacking {
  /** Only ever made smaller. */
  readonly most: number;
  readonly evidence: readonly string[];
}
const lacking = JSON.parse(readFileSync(resolve(root, 'evidence/lacking.json'), 'utf8')) as Lacking;

test('every subject stands once, and every piece of evidence is about one of them', () => {
  expect(new Set(evidenceSubjects).size).toBe(evidenceSubjects.length);
  expect(evidenceList.map(({ subject }) => subject).filter((each) => !evidenceSubjects.includes(each))).toEqual([]);
});

test('what lacks evidence is on the list, and what has some by now is not: the list only shrinks', () => {
  const without = lackingEvidence.filter((each) => !lacking.evidence.includes(each));
  expect(
    without,
    'add a printed, independent or law test and its claim; a rule: one case that passes, one that fails',
  ).toEqual([]);
  const settled = lacking.evidence.filter((each) => !lackingEvidence.includes(each));
  expect(settled, 'strike these from evidence/lacking.json, and make `most` smaller').toEqual([]);
  expect(lacking.most).toBe(lacking.evidence.length);
  expect(lacking.most).toBeLessThanOrEqual(mostEver);
});

/** How long the list was when it was made. Only ever made smaller. */
const mostEver = 0;

/** The test file and the data that lie beside it. */
function textAround(test: string): string {
  const path = resolve(root, test);
  const beside = readdirSync(dirname(path)).filter((each) => each.endsWith('.json'));
  return [path, ...beside.map((each) => resolve(dirname(path), each))]
    .map((each) => readFileSync(each, 'utf8'))
    .join('\n');
}

test('every claim names a test that is there, and words that stand in it', () => {
  const texts = new Map<string, string>();
  for (const { subject, test: path, words } of evidenceList) {
    expect(existsSync(resolve(root, path)), `${subject}: ${path}`).toBe(true);
    if (!texts.has(path)) texts.set(path, textAround(path));
    expect(texts.get(path)!.includes(words), `${subject}: '${words}' stands in ${path}`).toBe(true);
  }
});

test.each(printedNumbers.map((each, index) => [`${index} ${each.working.name}`, each] as const))(
  'printed: %s agrees to the last digit that was printed, or to what it says why',
  (_name, each) => {
    expect(workings).toContain(each.working);
    for (const { output, printed, ours, within } of core.compared(each)) {
      expect(within, `${output}: printed ${printed}, ours ${ours} (${core.showClause(each.source)})`).toBe(true);
    }
    if (each.looser !== undefined) expect(each.looser.because).not.toBe('');
  },
);

test('every working runs its own example', () => {
  for (const working of workings) {
    const readsFile = Object.values(working.inputs as core.Fields).some((each) => core.fieldOf(each).type === 'file');
    if (!readsFile) expect(core.calculate(working, working.example).results.length, working.name).toBeGreaterThan(0);
  }
});
