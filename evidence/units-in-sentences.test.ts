import { existsSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import {
  alarmRules,
  contributionTitle,
  type DesignedMachine,
  type DesignedPoint,
  demandRules,
  design,
  type Finding,
  growingFault,
  type Judgement,
  machineRules,
  type Plant,
  readTrain,
  reasoned,
  type Said,
  showMeasure,
  trainFindings,
} from '../packages/core/src/index.ts';
import { examplePlant, root } from './reading.ts';

/**
 * Law: no sentence carries a number in a unit or with a decimal sign that its reader did not ask for. Every sentence of
 * every example plant, and what every rule with an example says of it, is shown to two readers, in US units and with a
 * decimal comma.
 */

/** A sentence, and who says it: `area/entity`. */
interface Spoken {
  readonly by: string;
  readonly said: Said;
}

const plants = readdirSync(resolve(root, 'examples')).filter((folder) =>
  existsSync(resolve(root, 'examples', folder, 'plant.yaml')),
);

/** What stands in a text as somebody typed it, or would: names, ratings, words of a file. It may only shrink. */
const asTyped: readonly { readonly by: string; readonly text: RegExp }[] = [
  // Numbers of certificates.
  { by: 'area/conditions', text: /INV \d\d\.\d{4}X?/g },
  { by: 'area/certificate', text: /INV \d\d\.\d{4}X?/g },
  // The rating of a sealing as its data sheet words it.
  { by: 'chain/sealing', text: /IP68 \(10 m, continuous\)/g },
  { by: 'chain/water-jets', text: /IP68 \(10 m, continuous\)/g },
  // Questions about the unit that was typed.
  { by: 'demand/one-unit', text: /both in mm\/s, or both in in\/s/g },
  { by: 'demand/boundaries-usual', text: /Was '5\.1 mm\/s rms' meant\?/g },
];

const metricUnit = /(?:\d\s?|\s)(?:mm|µm|um|cm|km|m|kg)(?![\p{L}\d])|mm\/s|µm\/s|m\/s|°C/u;
const decimalPoint = /\d\.\d/;

/** What is wrong in a sentence; `typed` may be quoted in it. */
function wrongIn({ by, said }: Spoken, typed: readonly string[]): readonly string[] {
  const left = (text: string) =>
    asTyped.reduce(
      (rest, each) => (each.by === by ? rest.replace(each.text, '') : rest),
      typed.reduce((rest, each) => rest.replaceAll(each, ''), text),
    );
  const us = left(showMeasure(said, { units: 'us' }));
  const comma = left(showMeasure(said, { decimal: 'comma' }));
  return [
    ...(metricUnit.test(us) ? [`${by}, for US units: ${us}`] : []),
    ...(decimalPoint.test(comma) ? [`${by}, for a decimal comma: ${comma}`] : []),
    ...(us.includes('[object') ? [`${by}, an object for a text: ${us}`] : []),
  ];
}

const wrong = (spoken: readonly Spoken[], typed: readonly string[] = []) => [
  ...new Set(spoken.flatMap((each) => wrongIn(each, typed))),
];

function ofFinding({ rule, found, limit, because, remedy, asks }: Finding): readonly Spoken[] {
  return [found, limit, because, ...remedy, asks ?? ''].map((said) => ({ by: rule, said }));
}

function ofJudgement(judgement: Judgement): readonly Spoken[] {
  return [reasoned(judgement), judgement.needs ?? ''].map((said) => ({ by: judgement.rule, said }));
}

function ofPoint({ appraisal, area, probes, budgets, alarms, settings }: DesignedPoint): readonly Spoken[] {
  return [
    ...[...(appraisal?.judgements ?? []), ...(area?.judgements ?? [])].flatMap(ofJudgement),
    ...(probes?.arrangements ?? []).flatMap(({ stated, rows }) =>
      rows.flatMap(({ value, because }) =>
        [because, ...(value.known ? [value.value] : [])].map((said) => ({ by: `probes ${stated.kind}`, said })),
      ),
    ),
    ...budgets.flatMap(({ budget }) =>
      budget.known
        ? budget.value.lines.map((line) => ({ by: 'contribution', said: contributionTitle(line.contribution) }))
        : [],
    ),
    ...(alarms?.register ?? []).map(({ because }) => ({ by: 'register', said: because })),
    ...settings.sets.flatMap(({ reasons }) => reasons.map((said) => ({ by: 'settings', said }))),
    ...settings.unknown.map((said) => ({ by: 'settings', said })),
  ];
}

/** Every target of the machine, grown at every point of it that watches. */
function ofFaults({ policy }: Plant, { points }: DesignedMachine): readonly Spoken[] {
  return points.flatMap(({ point, alarms, appraisal }) => {
    if (alarms === undefined || appraisal === undefined) return [];
    const watching = { point, alarms, prediction: appraisal.prediction, policy };
    return points.flatMap(({ point: statedAt }) =>
      statedAt.targets.flatMap((target) => {
        const fault = growingFault(watching, { target, days: 40.5, statedAt: statedAt.of });
        if (!fault.known) return [];
        const { notes, alarms: acting, record } = fault.value;
        const never = acting.flatMap((each) => each.never ?? []);
        return [...[...notes, ...never].map((said) => ({ by: 'event', said })), ...record.findings.flatMap(ofFinding)];
      }),
    );
  });
}

test.each(plants)('law: every sentence of %s is in the units and decimal sign of its reader', (folder) => {
  const plant = examplePlant(folder);
  const { findings, machines } = design(plant, 1);
  const spoken = [
    ...findings.flatMap(ofFinding),
    ...machines.flatMap((machine) => [...machine.points.flatMap(ofPoint), ...ofFaults(plant, machine)]),
  ];
  expect(spoken.length).toBeGreaterThan(100);
  expect(wrong(spoken)).toEqual([]);
});

/** What each rule that has an example finds in the one that fails. */
const inExamples: readonly (readonly [string, readonly Finding[], unknown])[] = [
  ...demandRules.map((each) => [each.id, each.check(each.invalid), each.invalid] as const),
  ...machineRules.map((each) => [each.id, trainFindings(readTrain(each.invalid)), each.invalid] as const),
  ...alarmRules.map((each) => [each.rule, each.findings(each.fails), each.fails] as const),
];

/** Every text in a record, however deep. */
function textsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}

test.each(inExamples)(
  'law: %s speaks of its example in the units and decimal sign of its reader',
  (_, findings, example) => {
    expect(findings.length).toBeGreaterThan(0);
    const typed = textsIn(example).filter((each) => /\d/.test(each));
    expect(wrong(findings.flatMap(ofFinding), typed)).toEqual([]);
    expect(textsIn(example).filter((each) => each.includes('[object'))).toEqual([]);
  },
);

test('negative: a metric unit, a decimal point and an object are each told', () => {
  const by = 'example';
  expect(wrong([{ by, said: 'no more than 147 m by capacitance' }])).toHaveLength(1);
  expect(wrong([{ by, said: 'a quarter, or 6.35 µm' }])).toHaveLength(2);
  expect(wrong([{ by, said: `a bearing of ${{}}` }])).toHaveLength(1);
  expect(wrong([{ by, said: 'certificate INV 24.0107X' }])).toHaveLength(1);
});

test('negative: nothing stands on the list of what is as typed that nobody says', () => {
  const spoken = [
    ...plants.flatMap((folder) =>
      design(examplePlant(folder), 1).machines.flatMap((machine) => machine.points.flatMap(ofPoint)),
    ),
    ...inExamples.flatMap(([, findings]) => findings.flatMap(ofFinding)),
  ];
  for (const { by, text } of asTyped) {
    expect(
      spoken.some((each) => each.by === by && showMeasure(each.said).search(text) >= 0),
      `${by} ${text}`,
    ).toBe(true);
  }
  expect(asTyped.length).toBeLessThanOrEqual(6);
});
