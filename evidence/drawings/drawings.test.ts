import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import {
  cableKinds,
  design,
  inputKinds,
  machineElementKinds,
  mountKinds,
  supplyKinds,
  transducerKinds,
} from '../../packages/core/src/index.ts';
import { partSymbol } from '../../packages/documents/src/chain/part-symbols.ts';
import type { Drawing } from '../../packages/documents/src/drawing/drawing.ts';
import { drawingStyle, lineWeights } from '../../packages/documents/src/drawing/style.ts';
import { type SymbolName, symbols } from '../../packages/documents/src/drawing/symbols.ts';
import { elementSymbol, plainBody } from '../../packages/documents/src/machine/element-symbols.ts';
import { examplePlant, root } from '../reading.ts';
import { drawingFaults } from './drawing-faults.ts';
import { everyDrawing, issuedDrawings, type StandingDrawing } from './every-drawing.ts';
import { letterHeights } from './on-paper.ts';

const names = readdirSync(resolve(root, 'examples')).filter((name) =>
  existsSync(resolve(root, 'examples', name, 'plant.yaml')),
);
const designs = new Map(names.map((name) => [name, design(examplePlant(name), 1)]));
const drawn = new Map(
  names.map((name) => [
    name,
    [...everyDrawing(designs.get(name)!), ...everyDrawing(designs.get(name)!, { units: 'us' })],
  ]),
);
const all: readonly StandingDrawing[] = [...drawn.values()].flat();
const partKinds = [...transducerKinds, ...mountKinds, ...cableKinds, ...supplyKinds, ...inputKinds];

test.each(names)(
  'law: no text of a drawing of %s touches another, leaves sheet or box, or is run through or cut',
  (name) => {
    const found = drawn
      .get(name)!
      .flatMap(({ of, on, drawing }) =>
        drawingFaults(drawing).map(({ fault, text, other }) => `${of}, ${on}: ${fault}: '${text}' ${other}`),
      );
    expect(found).toEqual([]);
  },
);

/**
 * Capitals of a drawing somebody works from are at least 2.5 mm high, those of a picture in a page of text at least
 * 1.8 mm, no lower than the tables about it: two heights of the series of ISO 3098, from memory.
 */
const lowest = (of: string) =>
  ['loop-diagrams', 'grounding-drawing', 'mounting-instructions'].includes(of) ? 2.5 : 1.8;

test.each(names)('law: every letter of an issued drawing of %s can be read on A4', (name) => {
  const found = issuedDrawings(designs.get(name)!).flatMap((standing) =>
    letterHeights(standing)
      .filter(({ height }) => height < lowest(standing.of))
      .slice(0, 1)
      .map(({ text, height }) => `${standing.of}, ${standing.drawing.title}: '${text}' ${height.toFixed(2)} mm`),
  );
  expect(found).toEqual([]);
});

test('law: lines are drawn with the listed widths only, each of them in use', () => {
  const used = [...drawingStyle.matchAll(/stroke-width:([\d.]+)(px)?/g)].flatMap(([, width, halo]) =>
    halo === undefined ? [Number(width)] : [],
  );
  expect([...new Set(used)].sort()).toEqual(Object.values(lineWeights).sort());
  expect(Object.values(lineWeights).length).toBeLessThanOrEqual(5);
});

/** What is drawn with symbols; the others are plots and sections, whose faces are what they show. */
const schematic = /^(?:Train of|Measuring chain at|Loop of|Earths of)/;
const isSign = (mark: Drawing['marks'][number]) =>
  mark.is === 'rectangle' || mark.is === 'circle' || (mark.is === 'polyline' && mark.closed === true);

test('law: every closed shape of a schematic is a stroke of a listed symbol', () => {
  const strange = all
    .filter(({ drawing }) => schematic.test(drawing.title))
    .flatMap(({ of, drawing }) =>
      drawing.marks
        .filter((mark) => isSign(mark) && mark.symbol === undefined)
        .map((mark) => `${of}: ${JSON.stringify(mark)}`),
    );
  expect(strange).toEqual([]);
});

test('law: every listed symbol is one of a kind, or drawn somewhere in the example plants', () => {
  const ofKinds = [
    ...machineElementKinds.map(({ kind }) => elementSymbol(kind)(0, 0)),
    ...partKinds.map(({ kind }) => partSymbol(kind as never)(0, 0)),
    plainBody(0, 0),
  ];
  for (const [first, ...rest] of ofKinds) {
    expect(first?.symbol).toBeDefined();
    expect(rest.every((mark) => mark.symbol === first!.symbol)).toBe(true);
  }
  const marks = [...ofKinds.flat(), ...all.flatMap(({ drawing }) => drawing.marks)];
  const used = new Set(marks.flatMap((mark) => mark.symbol ?? []));
  expect(Object.keys(symbols).filter((name) => !used.has(name as SymbolName))).toEqual([]);
});

test('law: every function that makes a drawing is among those looked at', () => {
  const sources = readdirSync(resolve(root, 'packages/documents/src'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts') && !path.endsWith('.test.ts'))
    .map((path) => readFileSync(resolve(root, 'packages/documents/src', path), 'utf8'));
  const makers = sources.flatMap((text) =>
    [...text.matchAll(/^export function (\w+)\((?:(?!^export function)[\s\S])*?\): Drawing\b/gm)].map(
      ([, name]) => name!,
    ),
  );
  // These three stand in issued documents only; the pictures of an acceptance are made of recordings, not of a design.
  const issued = ['loopDrawing', 'groundingDrawing', 'mountSection', 'pictureDrawing'];
  expect(makers.length).toBeGreaterThan(9);
  expect(makers.filter((name) => !issued.includes(name) && !all.some(({ of }) => of === name))).toEqual([]);
  const kinds = new Set(all.map(({ of }) => of));
  for (const kind of ['loop-diagrams', 'grounding-drawing', 'mounting-instructions']) expect(kinds).toContain(kind);
});
