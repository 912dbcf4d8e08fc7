import {
  completenessFindings,
  completenessRules,
  type Design,
  type DesignedPoint,
  design,
  type Plant,
} from '@soundpost/core';
import { documentRecord, issuedKinds, issueFacts, setFindings, tablesOf } from '@soundpost/documents/document-set';
import { catalogueReader, plantReader, readYaml } from '@soundpost/files';
import { expect, test } from 'vitest';
import { fileOf, pump } from '../testing/house.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const generic = readYaml(
  bytes(fileOf('packages/files/catalogues/generic.yaml')),
  'generic.yaml',
  catalogueReader,
).value;

function plantFrom(text: string): Plant {
  return readYaml(
    bytes(text),
    'plant.yaml',
    plantReader(() => generic),
  ).value;
}

const good = design(plantFrom(pump()), 1);
const loop = 'P-301/pump-drive-end-loop';

const told = (of: Design) => completenessFindings(of).map((each) => `${each.rule} at ${each.at}`);

test('the demo plant lacks nothing', () => {
  expect(told(good)).toEqual([]);
});

/** The design of the demo plant with its current loop changed as somebody's slip would change it. */
function withLoop(change: (point: DesignedPoint) => DesignedPoint): Design {
  return {
    ...good,
    machines: good.machines.map((machine) => ({
      ...machine,
      points: machine.points.map((each) => (each.point.of === loop ? change(each) : each)),
    })),
  };
}

/** The demo plant designed anew after its loop was stated otherwise. */
function restated(change: (point: Plant['machines'][number]['points'][number]) => object): Design {
  const { plant } = good;
  const machines = plant.machines.map((machine) => ({
    ...machine,
    points: machine.points.map((each) =>
      each.statement.name === 'pump-drive-end-loop' ? { ...each, ...change(each) } : each,
    ),
  }));
  return design({ ...plant, machines }, 1);
}

const isolated = pump({
  'in-line: [LOOP-24]': 'in-line: [GI-420]',
  '          input: AI-16\n': '          input: AI-16\n        wiring:\n          input-earthed: no\n',
});

const withoutOwnSupply = readYaml(
  bytes(fileOf('packages/files/catalogues/generic.yaml').replaceAll(/^ {4}own-supply: .*\n/gm, '')),
  'generic.yaml',
  catalogueReader,
).value;
const unfed = design(
  readYaml(
    bytes(isolated),
    'plant.yaml',
    plantReader(() => withoutOwnSupply),
  ).value,
  1,
);

const oneCored = (cable: NonNullable<Plant['machines'][number]['points'][number]['way']>['cable']) => ({
  ...cable,
  sheet: {
    ...cable.sheet,
    values: { ...cable.sheet.values, cores: { known: true as const, value: 1, written: '1' } },
  },
});

const mutants: readonly (readonly [what: string, mutant: () => Design, rule: string, at: string])[] = [
  [
    'its targets are taken out',
    () => restated(({ statement }) => ({ statement: { ...statement, targets: [] } })),
    'transducer-target',
    loop,
  ],
  ['its transducer is taken out', () => restated(() => ({ chosen: undefined })), 'alarm-loop', loop],
  [
    'the part a cable leads on from is taken out',
    () =>
      restated(({ way }) => ({
        way: { ...way, onward: [{ behind: 1, cable: way!.cable, length: way!.cableLength }] },
      })),
    'cable-ends',
    loop,
  ],
  [
    'a core of its cable is taken out',
    () => restated(({ way }) => ({ way: { ...way, cable: oneCored(way!.cable) } })),
    'cable-cores',
    loop,
  ],
  [
    'a part is taken out and its tag stays',
    () => restated(({ way }) => ({ way: { ...way, inLine: [], tags: ['PS-1'] } })),
    'tag',
    loop,
  ],
  [
    'another point takes its name',
    () => ({
      ...good,
      machines: good.machines.map((machine) => ({ ...machine, points: [...machine.points, machine.points.at(-1)!] })),
    }),
    'tag',
    loop,
  ],
  [
    'its point is taken out and a ground loop still passes it',
    () => ({
      ...good,
      loops: [
        {
          points: ['P-301/gone'],
          members: [],
          through: 'signal',
          remedy: [],
          resistance: { known: true, value: 0 },
          byDesign: false,
        },
      ],
    }),
    'tag',
    'P-301/gone',
  ],
  ['its earth is taken out', () => design(plantFrom(isolated), 1), 'loop-earth', loop],
  ['the area its isolator serves is not stated', () => design(plantFrom(isolated), 1), 'barrier-area', loop],
  ['the supply of its isolator is not told', () => unfed, 'supply-voltage', loop],
  [
    'a value is taken out and nobody is named who knows it',
    () => design(plantFrom(pump({ 'smallest: 0.05 mm/s rms': 'smallest: unknown' })), 1),
    'unknown-assigned',
    'P-301/pump-drive-end-horizontal',
  ],
];

test.each(mutants)('mutation: where %s, the rule for it names it', (_, mutant, rule, at) => {
  expect(told(mutant())).toContain(`completeness/${rule} at ${at}`);
});

test('law: an isolator whose own supply is stated is not asked about', () => {
  expect(told(design(plantFrom(isolated), 1)).filter((each) => each.includes('supply-voltage'))).toEqual([]);
});

test('completeness: every rule is caught by a mutation of the demo plant', () => {
  const caught = new Set(mutants.map(([, , rule]) => `completeness/${rule}`));
  expect(completenessRules.map((each) => each.id).filter((id) => !caught.has(id))).toEqual([]);
});

const facts = issueFacts(good, { contentHash: 'a1b2' });
const records = issuedKinds.flatMap((kind) => documentRecord(kind, good, facts) ?? []);

test('the documents of one design agree with each other', () => {
  expect(setFindings(records)).toEqual([]);
});

test('mutation: a terminal or a tag that only one document has is named', () => {
  const silent = records.map((record) => ({
    ...record,
    sheets: record.sheets.map((sheet) => ({
      ...sheet,
      blocks: sheet.blocks.map((block) =>
        block.is === 'table' &&
        ((record.kind === 'commissioning-tests' && block.name.endsWith(' terminals')) ||
          record.kind === 'instrument-list')
          ? { ...block, rows: block.rows.slice(0, -1) }
          : block,
      ),
    })),
  }));
  const rules = new Set(setFindings(silent).map((each) => each.rule));
  expect(rules).toEqual(new Set(['completeness/terminals-agree', 'completeness/tags-agree']));
  expect(setFindings(silent).some((each) => each.at === loop)).toBe(true);
});

test('every terminal table has the points of the loop diagrams', () => {
  const kind = (name: string) => records.find((each) => each.kind === name)!;
  const named = (name: string) =>
    tablesOf(kind(name)).flatMap((each) => (each.name.endsWith(' terminals') ? [each.name] : []));
  expect(named('commissioning-tests')).toEqual(named('loop-diagrams'));
  expect(named('loop-diagrams').length).toBeGreaterThan(1);
});

// `withLoop` keeps a design as it is but for one point: what a slip between design and issue would leave.
test('mutation: a chain whose input does not take what arrives leaves its alarm without a loop', () => {
  const broken = withLoop((each) => ({
    ...each,
    appraisal: {
      ...each.appraisal!,
      prediction: {
        ...each.appraisal!.prediction,
        chain: { ...each.appraisal!.prediction.chain, meets: false, doubt: undefined },
      },
    },
  }));
  expect(told(broken)).toContain(`completeness/alarm-loop at ${loop}`);
});
