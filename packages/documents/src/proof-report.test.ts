import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Design, design, type Plant, showMeasure, showReference } from '@soundpost/core';
import { catalogueReader, plantReader, readYaml } from '@soundpost/files';
import { expect, test } from 'vitest';
import { loopScaleDrawing } from './alarm/loop-scale.ts';
import { amplitudeChart } from './chain/amplitude-chart.ts';
import { biasDrawing } from './chain/bias-drawing.ts';
import { chainDrawing } from './chain/chain-drawing.ts';
import { noisePlot } from './chain/noise-plot.ts';
import { responsePlot } from './chain/response-plot.ts';
import { usableBands } from './chain/usable-band.ts';
import type { Drawing, Label, Width } from './drawing/drawing.ts';
import { boxesAlong } from './drawing/label-placing.ts';
import { inside, labelBox, overlap } from './drawing/text-extent.ts';
import { documentKinds } from './kinds.ts';
import { speedMapDrawing } from './machine/speed-map-drawing.ts';
import { trainDrawing } from './machine/train-drawing.ts';
import { proofReport } from './proof-report.ts';
import { sourcesCited } from './source/sources-cited.ts';

const root = resolve(import.meta.dirname, '../../..');
const generic = readYaml(
  readFileSync(resolve(root, 'packages/files/catalogues/generic.yaml')),
  'generic.yaml',
  catalogueReader,
).value;
const demo = readFileSync(resolve(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');

function plantFrom(text: string): Plant {
  return readYaml(
    new TextEncoder().encode(text),
    'plant.yaml',
    plantReader(() => generic),
  ).value;
}

const seed = 1;
const pump = design(plantFrom(demo), seed);
/** A magnet under the transducer, a level nobody knows, and no transducer at the other point. */
const failing = design(
  plantFrom(
    demo
      .replace('mount: stud', 'mount: magnet-flat')
      .replace('smallest: 0.05 mm/s rms', 'smallest: unknown')
      .replace(/ {10}transducer: LPV-25\n {10}mount: stud\n/, ''),
  ),
  seed,
);

/** Every plant of the examples, the demo plant among them, and one that fails. */
const examples = readdirSync(resolve(root, 'examples')).filter((name) =>
  existsSync(resolve(root, 'examples', name, 'plant.yaml')),
);
const reports: readonly (readonly [string, Design, string])[] = [
  ...examples
    .filter((name) => name !== 'raw-water-pump')
    .map(
      (name) =>
        [name, design(plantFrom(readFileSync(resolve(root, 'examples', name, 'plant.yaml'), 'utf8')), seed)] as const,
    ),
  ['the demo plant', pump] as const,
  ['a plant that fails', failing] as const,
].map(([name, of]) => [name, of, proofReport(of, { issuedOn: '2026-11-25', contentHash: 'a1b2' })]);

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

/** What a reader of the file reads: tags left out, spaces made plain. */
function textOf(report: string): string {
  return report
    .replace(/<style>[\s\S]*?<\/style>/, ' ')
    .replace(/<wbr>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&(amp|lt|gt|quot|#39);/g, (_, name) => entities[name]!)
    .replace(/[\s\u00a0\u2007\u2008]+/g, ' ');
}

const words = (text: string) => text.replace(/[\s\u00a0]+/g, ' ').trim();

/** Every tag closed in order, every attribute quoted, nothing but our own elements. */
function faultsOfMarkup(report: string): readonly string[] {
  const faults: string[] = [];
  const open: string[] = [];
  const empty = new Set(['meta', 'br', 'wbr']);
  const tags = /<(\/?)([a-zA-Z][a-zA-Z0-9]*)((?:\s+[a-zA-Z-]+(?:="[^"<]*")?)*)\s*(\/?)>/g;
  const body = report.replace(/^<!DOCTYPE html>/, '').replace(/<style>[\s\S]*?<\/style>/, '<style></style>');
  for (const [, closing, name, , selfClosed] of body.matchAll(tags)) {
    if (closing === '/') {
      const last = open.pop();
      if (last !== name) faults.push(`</${name}> closes <${last}>`);
    } else if (selfClosed !== '/' && !empty.has(name!)) open.push(name!);
  }
  if (open.length > 0) faults.push(`left open: ${open.join(', ')}`);
  const rest = body.replace(tags, '');
  if (/[<>]/.test(rest))
    faults.push(`a stray bracket: ${rest.slice(Math.max(0, rest.search(/[<>]/) - 20)).slice(0, 60)}`);
  const ids = [...report.matchAll(/\sid="([^"]*)"/g)].map((each) => each[1]!);
  for (const id of ids) if (ids.indexOf(id) !== ids.lastIndexOf(id)) faults.push(`id ${id} stands twice`);
  for (const [, target] of report.matchAll(/href="#([^"]*)"/g))
    if (!ids.includes(target!)) faults.push(`no anchor ${target}`);
  return faults;
}

/** Whatever would load, run or leave the file. */
const acting =
  /<script|<iframe|<object|<embed|<link|<img|<form|\son[a-z]+\s*=\s*"|javascript:|https?:|url\(|@import|src=|xlink/i;

test.each(reports)('law: the report of %s is well formed and self-contained', (_, __, report) => {
  expect(faultsOfMarkup(report)).toEqual([]);
  expect(report.replace(/<style>[\s\S]*?<\/style>/, '')).not.toMatch(acting);
  expect(report).not.toMatch(/https?:|url\(|@import/);
});

test('law: the same design gives the same bytes twice', () => {
  const again = design(plantFrom(demo), seed);
  expect(proofReport(again)).toBe(proofReport(pump));
});

test.each(reports)(
  'law: every target, judgement, finding and source of %s can be read in its report',
  (_, of, report) => {
    const text = textOf(report);
    const missing: string[] = [];
    const expectRead = (what: string) => {
      if (!text.includes(words(what))) missing.push(what);
    };
    for (const { stated, points } of of.machines) {
      expectRead(stated.title);
      for (const { point, stated: statement, appraisal, alarms, budgets } of points) {
        for (const [index, target] of point.targets.entries()) {
          expectRead(target.name);
          expectRead(target.cause);
          const named = statement.statement.targets[index]?.frequency;
          if (named?.known === true) expectRead(showReference(named.value));
        }
        for (const each of appraisal?.judgements ?? []) {
          expectRead(`${showMeasure(each.what)} ${showMeasure(each.found)}`);
          expectRead(showMeasure(each.limit));
        }
        for (const reason of Object.values(alarms?.setPoints.reasons ?? {})) expectRead(showMeasure(reason));
        for (const budget of budgets) if (budget.promise.known) expectRead(budget.promise.value);
      }
    }
    for (const finding of of.findings) {
      for (const each of [finding.at, finding.because, finding.found, ...finding.remedy]) expectRead(showMeasure(each));
      if (finding.asks !== undefined) expectRead(showMeasure(finding.asks));
    }
    for (const { source, how } of sourcesCited(of)) {
      expectRead(source.title);
      expectRead(how);
    }
    expect(missing).toEqual([]);
  },
);

test('the verdict is never told without what it is against', () => {
  const route = pump.plant.machines.map((machine) => ({ ...machine, points: machine.points.slice(0, 1) }));
  const proven = textOf(proofReport(design({ ...pump.plant, machines: route }, seed)));
  const [open, not] = [textOf(proofReport(pump)), textOf(proofReport(failing))];
  expect(proven).toMatch(/(?<!not )proven against the 5 stated targets of 1 measuring point/);
  expect(open).toMatch(/open questions against the 6 stated targets of 2 measuring points/);
  expect(not).toMatch(/not proven against the 6 stated targets of 2 measuring points/);
  for (const text of [proven, open, not]) {
    expect(text).not.toMatch(/\bOK\b/);
    expect(text).not.toMatch(/\bsafe\b/i);
    expect(text).toContain('What could not be proven');
  }
});

test('without a single target nothing is called proven', () => {
  const bare: Plant = {
    ...pump.plant,
    machines: pump.plant.machines.map((machine) => ({
      ...machine,
      points: machine.points.map((point) => ({ ...point, statement: { ...point.statement, targets: [] } })),
    })),
  };
  expect(textOf(proofReport(design(bare, seed)))).toContain('not proven : no target is stated');
});

test('what is not known is said where it is missed', () => {
  const text = textOf(proofReport(failing));
  expect(text).toContain('No transducer and mount are chosen here');
  expect(text).toContain('smallest level of P-301/pump-drive-end-horizontal/vane pass');
});

/** A plant whose every name is out to break the page. */
function hostile(name: string): Plant {
  const { plant } = pump;
  const known = { known: true as const, value: name, written: name };
  return {
    ...plant,
    title: { ...plant.title, values: { ...plant.title.values, name: known, owner: known, revision: known } },
    machines: plant.machines.map((machine) => ({
      ...machine,
      name,
      title: name,
      points: machine.points.map((point) => ({
        ...point,
        ...(point.chosen === undefined
          ? {}
          : { chosen: { ...point.chosen, transducer: { ...point.chosen.transducer, name } } }),
        statement: {
          ...point.statement,
          name,
          location: known,
          targets: point.statement.targets.map((target) => ({ ...target, name: `${name}${target.name}`, cause: name })),
          disturbances: point.statement.disturbances.map((each) => ({ ...each, name })),
        },
      })),
    })),
  };
}

const attacks: readonly (readonly [string, string])[] = [
  ['with a script and an image', '"><script>alert(1)</script><img src=x onerror=alert(1)>'],
  ['with a handler', "' onload='alert(1)' x='"],
  ['that closes the style', '</title></style><style>*{display:none}</style>'],
  ['that turns the writing around', '\u202E\u2066evil\u0000\u001b[31m\u2028'],
  ['that forges the foot of the sheet', '\\";}@page{@bottom-left{content:"forged"'],
  ['of one word of 10 kB', 'W'.repeat(10_240)],
  ['of 10 kB of short words', 'ab '.repeat(3500)],
  ['of 10 kB of pictures', '\u{1F980}'.repeat(2560)],
];

test.each(attacks)('negative: a plant with a name %s is only a plant with odd names', (_, name) => {
  const report = proofReport(design(hostile(name), seed), { contentHash: name });
  expect(faultsOfMarkup(report)).toEqual([]);
  const tags = [...report.replace(/<style>[\s\S]*?<\/style>/, '').matchAll(/<[^>]*>/g)].map((each) => each[0]);
  expect(tags.filter((tag) => acting.test(tag))).toEqual([]);
  expect(report.match(/<style>/g)).toHaveLength(1);
  expect(report.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202A-\u202E\u2066-\u2069\p{Zl}\p{Cs}]/u);
  expect(report.length).toBeLessThan(3_000_000);
});

function drawingsOf(of: Design, width: Width): readonly Drawing[] {
  return of.machines.flatMap((machine) => [
    trainDrawing(machine, {}, width),
    ...[speedMapDrawing(machine, {}, width) ?? []].flat(),
    ...machine.points.flatMap((point) =>
      [amplitudeChart, responsePlot, noisePlot, biasDrawing, chainDrawing, loopScaleDrawing].flatMap(
        (draw) => draw(point, {}, width) ?? [],
      ),
    ),
  ]);
}

/** Labels that touch another one or leave the drawing. */
function faultsOfLabels({ title, width, height, marks }: Drawing): readonly string[] {
  const labels = marks.filter((mark): mark is Label => mark.is === 'label' && mark.text !== '');
  const sheet = { x: -1, y: -1, width: width + 2, height: height + 2 };
  return labels.flatMap((label, index) => {
    const box = labelBox(label);
    const touched = labels.slice(index + 1).find((other) => overlap(box, labelBox(other)));
    return [
      ...(touched === undefined ? [] : [`${title}: '${label.text}' touches '${touched.text}'`]),
      ...(inside(box, sheet) ? [] : [`${title}: '${label.text}' is cut off`]),
    ];
  });
}

test.each(['wide', 'narrow'] as const)('law: no label of a %s drawing touches another one or is cut off', (width) => {
  for (const of of [...reports.map(([, each]) => each), design(hostile('W'.repeat(10_240)), seed)]) {
    const drawings = drawingsOf(of, width);
    expect(drawings.length).toBeGreaterThan(2);
    expect(drawings.flatMap(faultsOfLabels)).toEqual([]);
  }
});

test.each(['wide', 'narrow'] as const)('law: in a %s drawing of a train no link runs through a name', (width) => {
  for (const machine of reports.flatMap(([, of]) => of.machines)) {
    const { marks } = trainDrawing(machine, {}, width);
    const upright = marks.flatMap((mark) =>
      mark.is === 'polyline' && mark.points.every(([x]) => x === mark.points[0]?.[0])
        ? boxesAlong(mark.points, 0.1)
        : [],
    );
    const crossed = marks.flatMap((mark) =>
      mark.is === 'label' && upright.some((each) => overlap(each, labelBox(mark))) ? [mark.text] : [],
    );
    expect(crossed).toEqual([]);
  }
});

test('law: every drawing has a title and a description for those who do not see it', () => {
  for (const { title, description } of drawingsOf(pump, 'wide')) {
    expect(title.length).toBeGreaterThan(5);
    expect(description.length).toBeGreaterThan(30);
  }
});

test('printed: usable upper frequency of a 27 kHz accelerometer on a stud, 8141 Hz for +10 % and 14 590 Hz for +3 dB (scenario of the raw-water pump, computed there)', () => {
  const [tenPercent, threeDecibels] = usableBands(pump.machines[0]!.points[0]!, { low: 1, high: 50_000 });
  // The chain has corners and a cable besides the resonance: half a percent.
  expect(tenPercent!.stretches[0]!.high / 8141).toBeCloseTo(1, 2);
  expect(threeDecibels!.stretches[0]!.high / 14_590).toBeCloseTo(1, 2);
});

test('law: every kind of document makes a file of any design, named by its kind once', () => {
  expect(new Set(documentKinds.map((each) => each.kind)).size).toBe(documentKinds.length);
  for (const each of documentKinds) expect(each.make(pump).length).toBeGreaterThan(1000);
});
