import { design, valueIfStated } from '@soundpost/core';
import { expect, test } from 'vitest';
import { generatedPlant } from '../../../../../evidence/document-set/plant.mjs';
import { plantOf } from '../../../../../evidence/reading.ts';
import { cellText } from '../cells.ts';
import { everyPoint } from '../every-point.ts';
import { issueFacts } from '../issue-facts.ts';
import { documentRecord } from '../issued-kind.ts';
import { type SetTable, tablesOf } from '../record.ts';
import { requirementSheets } from './requirement-sheets.ts';

const works = design(plantOf(generatedPlant(60)), 1);
const record = documentRecord(requirementSheets, works, issueFacts(works, { contentHash: 'a1b2' }))!;
const tables = tablesOf(record);
const ofType = (name: string, what: string) => tables.find((each) => each.name === `${name} ${what}`);
const placed = everyPoint(works).filter(({ designed }) => designed.appraisal !== undefined);
const typeOf = (designed: (typeof placed)[number]['designed']) => designed.stated.chosen!.transducer.name;

/** Which places a row stands for, as a person would look them up. */
function placesOf(row: SetTable['rows'][number], groups: SetTable | undefined): readonly string[] {
  const said = cellText(row[0]!);
  const group = /^(Group \d+): \d+ places$/.exec(said)?.[1];
  if (group === undefined) return said.split(', ');
  return (groups?.rows ?? []).flatMap(([name, , tags]) =>
    cellText(name!).replace(', continued', '') === group ? cellText(tags!).split(', ') : [],
  );
}

test('law: every judgement of every place stands in a row that names the place, its rule and its limit', () => {
  expect(placed).toHaveLength(60);
  for (const { designed } of placed) {
    const name = typeOf(designed);
    const rows = ofType(name, 'deviations')!.rows.filter((row) =>
      placesOf(row, ofType(name, 'groups')).includes(designed.point.of),
    );
    const asked = new Set(designed.appraisal!.judgements.map(({ rule, target, what }) => `${rule} ${target ?? what}`));
    expect(rows.length, designed.point.of).toBeGreaterThanOrEqual(asked.size);
  }
});

test('law: the surface and the band of each place lie within what its row says of the target', () => {
  let held = 0;
  for (const { designed } of placed) {
    const name = typeOf(designed);
    const { columns, rows } = ofType(name, 'places')!;
    const at = (head: string) => columns.findIndex((each) => each.head === head);
    for (const target of designed.point.targets) {
      const row = rows.find(
        (each) =>
          cellText(each[at('Target')]!) === target.name &&
          placesOf(each, ofType(name, 'groups')).includes(designed.point.of),
      )!;
      const { surfaceTemperature } = designed.point;
      const kelvin = valueIfStated(surfaceTemperature);
      const numbers = cellText(row[at('Surface')]!).match(/\d+/g) ?? [];
      if (kelvin !== undefined) {
        expect(Number(numbers[0])).toBeLessThanOrEqual(Math.round(kelvin - 273.15));
        expect(Number(numbers.at(-1))).toBeGreaterThanOrEqual(Math.round(kelvin - 273.15));
      }
      const [from, to] = [row[at('From')]!, row[at('To')]!];
      if (!target.band.known || from.is !== 'number' || to.is !== 'number') continue;
      expect(from.value).toBeLessThanOrEqual(target.band.value.low);
      expect(to.value).toBeGreaterThanOrEqual(target.band.value.high);
      held += 1;
    }
  }
  expect(held).toBeGreaterThan(60);
});
