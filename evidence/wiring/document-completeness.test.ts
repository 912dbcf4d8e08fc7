import { existsSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import {
  cableRuns,
  type Design,
  design,
  partQuantities,
  terminalVoltages,
  usualSpares,
} from '../../packages/core/src/index.ts';
import { cellText } from '../../packages/documents/src/document-set/cells.ts';
import { issueFacts } from '../../packages/documents/src/document-set/issue-facts.ts';
import { documentRecord } from '../../packages/documents/src/document-set/issued-kind.ts';
import { issuedKinds } from '../../packages/documents/src/document-set/kinds.ts';
import { type SetTable, tablesOf } from '../../packages/documents/src/document-set/record.ts';
import { examplePlant, root } from '../reading.ts';

const names = readdirSync(resolve(root, 'examples')).filter((name) =>
  existsSync(resolve(root, 'examples', name, 'plant.yaml')),
);
const designs = new Map(names.map((name) => [name, design(examplePlant(name), 1)]));

function recordOf(of: Design, kind: string) {
  const definition = issuedKinds.find((each) => each.kind === kind)!;
  return documentRecord(definition, of, issueFacts(of, { contentHash: 'a1b2' }))!;
}

function rowsOf(table: SetTable): readonly Readonly<Record<string, string>>[] {
  return table.rows.map((row) => Object.fromEntries(table.columns.map(({ head }, at) => [head, cellText(row[at]!)])));
}

const tables = (of: Design, kind: string) => tablesOf(recordOf(of, kind));
const chosen = (of: Design) =>
  of.machines.flatMap(({ points }) => points.filter((each) => each.appraisal !== undefined));

/** How often each name stands in a list; counted here and not by the code under test. */
function counted(all: readonly string[]): Readonly<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const each of all) counts[each] = (counts[each] ?? 0) + 1;
  return counts;
}

test.each(names)(
  'law: every part of every chain of %s is on exactly one line of the purchase list, and they add up',
  (name) => {
    const of = designs.get(name)!;
    const rows = rowsOf(tables(of, 'purchase-list').find((each) => each.name === 'parts')!);
    const needed = counted(
      chosen(of).flatMap(({ appraisal }) => {
        const { transducer, mount, inLine, input } = appraisal!.prediction.chain.parts;
        return [
          `transducer/${transducer.name}`,
          `mount/${mount.name}`,
          ...inLine.map((each) => `in the line/${each.name}`),
          `input channel/${input.name}`,
        ];
      }),
    );
    const lines = rows.map((row) => `${row.Part}/${row.Type}`);
    expect(new Set(lines).size).toBe(lines.length);
    expect(Object.fromEntries(rows.map((row) => [`${row.Part}/${row.Type}`, Number(row['In use'])]))).toEqual(needed);
    for (const row of rows.filter((each) => each.Part !== 'input channel')) {
      expect(Number(row.Spares)).toBeGreaterThanOrEqual(Number(row['In use']) / 10);
      expect(Number(row.Spares)).toBe(usualSpares(Number(row['In use'])));
    }
    expect(partQuantities(of)).toHaveLength(rows.length);
  },
);

test.each(names)(
  'law: every length of cable of %s is on one line of the purchase list and one of the schedule',
  (name) => {
    const of = designs.get(name)!;
    const runs = chosen(of).flatMap(({ appraisal }) => cableRuns(appraisal!.prediction.chain));
    const rows = rowsOf(tables(of, 'purchase-list').find((each) => each.name === 'cable')!);
    expect(Object.fromEntries(rows.map((row) => [row.Type, Number(row.Lengths)]))).toEqual(
      counted(runs.map(({ cable }) => cable.name)),
    );
    for (const row of rows) {
      const own = runs.filter(({ cable }) => cable.name === row.Type);
      if (own.some(({ length }) => !length.known)) expect(row['Together, m'] ?? row.Together).toMatch(/^unknown/);
      else {
        const metres = own.reduce((sum, { length }) => sum + (length.known ? length.value : 0), 0);
        expect(Number(row.Together)).toBeCloseTo(metres, 3);
      }
    }
    const schedule = tables(of, 'cable-schedule').flatMap((each) => each.rows);
    expect(schedule).toHaveLength(runs.length);
  },
);

test.each(names)(
  'law: every transducer of %s stands on one requirement sheet, every mount on one instruction',
  (name) => {
    const of = designs.get(name)!;
    const transducers = new Set(chosen(of).map(({ appraisal }) => appraisal!.prediction.chain.parts.transducer.name));
    const titles = recordOf(of, 'requirement-sheets').sheets.map(({ title }) => title);
    for (const each of transducers)
      expect(titles.filter((title) => title.split(/[\s:,]+/).includes(each))).toHaveLength(1);
    const listed = tables(of, 'mounting-instructions')
      .filter((each) => each.name.endsWith(' points'))
      .flatMap((each) => rowsOf(each).map((row) => row.Point));
    expect(listed.toSorted()).toEqual(
      chosen(of)
        .map(({ point }) => point.of)
        .toSorted(),
    );
  },
);

test.each(names)('law: every voltage, checkpoint and set point of %s is on the test sheet of its point', (name) => {
  const of = designs.get(name)!;
  const sheets = tables(of, 'commissioning-tests');
  const table = (point: string, what: string) => sheets.filter((each) => each.name === `${point} ${what}`);
  for (const { point, appraisal, alarms } of chosen(of)) {
    const { chain, loop } = appraisal!.prediction;
    const terminals = rowsOf(table(point.of, 'terminals')[0]!);
    expect(table(point.of, 'terminals')).toHaveLength(1);
    for (const { terminal, state, voltage } of terminalVoltages(chain)) {
      const own = terminals.filter((row) => row.Terminal === terminal);
      expect(own).toHaveLength(1);
      const low = own[0]![`Lowest ${state}`]!;
      if (voltage.known)
        expect(Math.abs(Number(low.replace('\u2212', '-')) - voltage.value.low)).toBeLessThanOrEqual(0.06);
      else expect(low).toMatch(/^unknown/);
    }
    const checkpoints = table(point.of, 'checkpoints').flatMap(rowsOf);
    const wanted = loop === undefined ? [] : [4, 8, 12, 16, 20];
    expect(checkpoints.map((row) => Number(row.Current))).toEqual(wanted);
    const acting = (alarms?.register ?? []).filter((row) => row.does !== undefined || /^(alert|trip)$/.test(row.name));
    expect(
      table(point.of, 'alarms')
        .flatMap(rowsOf)
        .map((row) => row.Level),
    ).toEqual(acting.map((row) => row.name));
  }
});
