import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { design } from '@soundpost/core';
import { catalogueReader, plantReader, readYaml } from '@soundpost/files';
import { expect, test } from 'vitest';
import type { Drawing, Label } from '../drawing/drawing.ts';
import { boxesAlong } from '../drawing/label-placing.ts';
import { inside, labelBox, overlap } from '../drawing/text-extent.ts';
import { issueFacts } from './issue-facts.ts';
import { documentRecord } from './issued-kind.ts';
import { issuedKinds } from './kinds.ts';
import { drawingsIn, tablesOf } from './record.ts';
import { setPage } from './set-page.ts';
import { standaloneSvg } from './standalone-svg.ts';

const root = resolve(import.meta.dirname, '../../../..');
const read = (path: string) => readFileSync(resolve(root, path));
const generic = readYaml(read('packages/files/catalogues/generic.yaml'), 'generic.yaml', catalogueReader).value;
const names = readdirSync(resolve(root, 'examples')).filter((name) =>
  existsSync(resolve(root, 'examples', name, 'plant.yaml')),
);
const examples = names.map((name) => {
  const of = design(
    readYaml(
      read(`examples/${name}/plant.yaml`),
      'plant.yaml',
      plantReader(() => generic),
    ).value,
    1,
  );
  const facts = issueFacts(of, { contentHash: 'a1b2c3d4e5f60718' });
  return { name, of, facts, records: issuedKinds.flatMap((kind) => documentRecord(kind, of, facts) ?? []) };
});

test.each(examples)('law: every point of $name stands in the instrument list, and no other', ({ of, records }) => {
  const list = records.find((each) => each.kind === 'instrument-list')!;
  const tags = tablesOf(list)[0]!.rows.map(([tag]) => tag?.is === 'text' && tag.text);
  expect(tags).toEqual(of.machines.flatMap((machine) => machine.points.map((each) => each.point.of)));
});

test.each(examples)('law: every row of every table of $name has a cell for every column', ({ records }) => {
  for (const record of records) {
    for (const { columns, rows } of tablesOf(record)) {
      for (const row of rows) expect(row).toHaveLength(columns.length);
      for (const [at, { kind }] of columns.entries()) {
        const strange = rows.map((row) => row[at]!.is).filter((is) => is !== 'unknown' && is !== 'none' && is !== kind);
        expect(strange).toEqual([]);
      }
    }
  }
});

/** Labels that touch another one, leave the drawing, or are crossed by an upright or level line. */
function faults({ title, width, height, marks }: Drawing): readonly string[] {
  const labels = marks.filter((mark): mark is Label => mark.is === 'label' && mark.text !== '');
  const sheet = { x: -1, y: -1, width: width + 2, height: height + 2 };
  return labels.flatMap((one, index) => {
    const touched = labels.slice(index + 1).find((other) => overlap(labelBox(one), labelBox(other)));
    return [
      ...(touched === undefined ? [] : [`${title}: '${one.text}' touches '${touched.text}'`]),
      ...(inside(labelBox(one), sheet) ? [] : [`${title}: '${one.text}' is cut off`]),
    ];
  });
}

/** A line that runs through letters: their box drawn in by a little, since it is made for the widest face. */
function crossed({ marks }: Drawing): readonly string[] {
  const strokes = marks.flatMap((mark) => (mark.is === 'polyline' ? boxesAlong(mark.points, 0.1) : []));
  return marks.flatMap((mark) => {
    if (mark.is !== 'label' || mark.text === '') return [];
    const { x, y, width, height } = labelBox(mark);
    const letters = { x: x + width * 0.1, y: y + height * 0.15, width: width * 0.75, height: height * 0.62 };
    return strokes.some((each) => overlap(each, letters)) ? [mark.text] : [];
  });
}

test.each(examples)('law: no label of a drawing of $name touches another one or is cut off', ({ records }) => {
  for (const record of records) expect(drawingsIn(record).flatMap((each) => faults(each.drawing))).toEqual([]);
});

test.each(examples)('law: in a loop diagram of $name no line runs through letters', ({ records }) => {
  const loops = records.find((each) => each.kind === 'loop-diagrams');
  expect(loops === undefined ? [] : drawingsIn(loops).flatMap((each) => crossed(each.drawing))).toEqual([]);
});

test.each(examples)('law: a drawing of $name that stands alone names every colour it uses', ({ records }) => {
  for (const { drawing } of records.flatMap(drawingsIn)) {
    const text = standaloneSvg(drawing);
    expect(text).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" width="\d/);
    expect(text).not.toMatch(/var\(|url\(|href|<script/);
  }
});

test.each(examples)('law: the page of $name is self-contained and says of which issue it is', ({ records, facts }) => {
  const page = setPage(records, facts);
  expect(page).not.toMatch(/<script|<link|<img|src=|https?:\/\/|@import/);
  expect(page).toContain(facts.contentHash);
  const ids = [...page.matchAll(/\sid="([^"]*)"/g)].map((each) => each[1]);
  expect(new Set(ids).size).toBe(ids.length);
});
