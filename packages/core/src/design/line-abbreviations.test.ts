import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { plantOf, root } from '../../../../evidence/reading.ts';
import { frequencyTable } from '../machine/frequency-table.ts';
import { lineAbbreviations } from '../machine/line-abbreviations.ts';
import { design, frequencyAtState } from './design.ts';

const text = readFileSync(resolve(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');
const table = frequencyTable(plantOf(text).machines[0]!.train);
const at = (name: string, state = 'highest') => frequencyAtState(table, name, state);
const missing = (name: string) => {
  const found = at(name);
  return found.known ? undefined : found.missing.map((each) => each.what);
};

test('letters that fit one line of the machine are that line, in capitals or not', () => {
  for (const written of ['VPF', 'vpf', 'BPF', 'impeller/VPF']) {
    expect(at(written), written).toEqual(at('impeller/vane-pass'));
  }
});

test('letters after an element are the line of that element', () => {
  expect(at('pump-drive-end/BPFO')).toEqual(at('pump-drive-end/outer-ring'));
  expect(at('motor-drive-end/BPFI')).toEqual(at('motor-drive-end/inner-ring'));
  expect(at('pump-drive-end/BSF')).toEqual(at('pump-drive-end/element-spin'));
  expect(at('pump-drive-end/FTF', 'lowest')).toEqual(at('pump-drive-end/cage', 'lowest'));
});

test('letters that fit two bearings are not decided: both are named', () => {
  expect(missing('BPFO')).toEqual([
    "line 'BPFO' (ball-pass frequency of the outer ring; is it 'motor-drive-end/outer-ring' or 'pump-drive-end/outer-ring'?)",
  ]);
});

test('letters at the wrong element name where such a line is; letters of what is not there say so', () => {
  expect(missing('impeller/FTF')![0]).toContain(
    "no such line at that element; is it 'motor-drive-end/cage' or 'pump-drive-end/cage'?",
  );
  expect(missing('GMF')).toEqual(["line 'GMF' (gear mesh frequency; the machine as stated has no such line)"]);
});

test('law: letters never hide a line by its whole name, and no letters stand twice', () => {
  for (const { line } of table.rows)
    expect(at(line.name)).toEqual(
      table.rows.find((row) => row.line === line)!.cells.find(({ state }) => state === 'highest')!.frequency,
    );
  expect(new Set(lineAbbreviations.map((each) => each.letters)).size).toBe(lineAbbreviations.length);
});

test('a target in letters is the target in whole names: same frequency, and nothing proposed a second time', () => {
  const letters = text.replace('3 x pump-drive-end/inner-ring at highest', '3 x pump-drive-end/BPFI at highest');
  expect(letters).not.toBe(text);
  const [whole, short] = [text, letters].map((each) => design(plantOf(each), 1).machines[0]!.points[0]!);
  expect(short!.point.targets.map((each) => each.frequencies)).toEqual(
    whole!.point.targets.map((each) => each.frequencies),
  );
  expect(short!.proposals).toEqual(whole!.proposals);
});

test('a target that names two bearings at once is asked about, with both names', () => {
  const open = text.replace('3 x pump-drive-end/inner-ring at highest', '3 x BPFI at highest');
  const asks = design(plantOf(open), 1).findings.flatMap((each) => each.asks ?? []);
  expect(asks.join(' ')).toContain("'motor-drive-end/inner-ring' or 'pump-drive-end/inner-ring'");
});
