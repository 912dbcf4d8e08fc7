import { expect, test } from 'vitest';
import { cable, changed, type Entry, input, parts, point, supply, transducer } from '../../../../../evidence/bench.ts';
import { type ChainParts, measuringChain } from '../../chain/chain.ts';
import { prediction } from '../../chain/prediction.ts';
import { type Judgement, outcomes, reason } from '../../chain/rules/rule.ts';
import { hazardousAreaSheet } from '../../demand/hazardous-area.ts';
import type { MeasuringPoint } from '../../demand/measuring-point.ts';
import { usualPolicy } from '../../demand/policy.ts';
import { answer, fieldOf, notStated, pointDecimals, type Stated, stated, words } from '../../quantity/index.ts';
import { areaComparison } from '../area-comparison.ts';
import { notProvenWording } from '../caution.ts';
import { judgedArea } from '../judged-area.ts';
import { areaRules } from './rules.ts';

type AreaWords = Partial<Record<keyof typeof hazardousAreaSheet, Entry>>;

/** The area of the hydrogen compressor, where nothing else is said. */
const usualArea: AreaWords = {
  zone: '1',
  group: 'IIC',
  temperatureClass: 'T3',
  ambient: '-20..40 °C',
  earthResistance: '0.5 ohm',
};

function inArea(words: AreaWords, around: { surface?: Entry; installation?: 'portable' } = {}): MeasuringPoint {
  const values: Record<string, Stated<unknown> | undefined> = {};
  for (const [name, entry] of Object.entries(hazardousAreaSheet)) {
    const text = { ...usualArea, ...words }[name as keyof AreaWords];
    if (text === undefined) continue;
    values[name] = text === 'unknown' ? notStated : stated(fieldOf(entry).read(text, pointDecimals), text);
  }
  const bare = point({}, { surface: around.surface ?? '70 °C' });
  return {
    ...bare,
    installation: around.installation ?? 'online',
    area: { of: 'hazardous area', values: values as NonNullable<MeasuringPoint['area']>['values'] },
  };
}

const acc = transducer('ACC-100X');
const zener = supply('ZB-28');
const through = (...inLine: ChainParts['inLine']): Partial<ChainParts> => ({ inLine });
const loop = (change: Partial<ChainParts> = {}): ChainParts =>
  parts({
    transducer: acc,
    cable: cable('TSP'),
    metres: 160,
    input: input('ONL-24'),
    inLine: [zener],
    ...change,
  });

interface Subject {
  readonly chain?: ChainParts;
  readonly area?: MeasuringPoint;
}

/** One case each rule must pass, and one it must not, each outcome where the rule has it. */
const rows: Readonly<Record<string, Partial<Record<(typeof outcomes)[number], Subject>>>> = {
  'area/certificate': {
    meets: {},
    fails: { chain: loop({ transducer: transducer('ACC-100') }) },
    'cannot tell': { chain: loop({ transducer: changed(acc, { certificateNumber: 'unknown' }) }) },
  },
  'area/level': {
    meets: {},
    fails: { chain: loop(through(changed(zener, { certificateMarking: '[Ex ic Gc] IIC' }))) },
    'cannot tell': { chain: loop({ transducer: changed(acc, { certificateMarking: 'Ex zz IIC T4 Ga' }) }) },
  },
  'area/group': {
    meets: { area: inArea({ group: 'IIB' }) },
    fails: { chain: loop({ transducer: changed(acc, { certificateMarking: 'Ex ia IIB T4 Ga' }) }) },
    'cannot tell': { area: inArea({ group: 'unknown' }) },
  },
  'area/temperature-class': {
    meets: { area: inArea({ temperatureClass: 'T4' }) },
    fails: { area: inArea({ temperatureClass: 'T6' }) },
    'cannot tell': { area: inArea({ temperatureClass: 'unknown' }) },
  },
  'area/ambient': {
    meets: { area: inArea({}, { surface: '100 °C' }) },
    fails: { area: inArea({}, { surface: '101 °C' }) },
    'cannot tell': { area: inArea({}, { surface: 'unknown' }) },
  },
  'area/barrier': {
    meets: {},
    fails: { chain: loop({ inLine: [] }) },
    'cannot tell': { chain: loop({ inLine: [] }), area: inArea({}, { installation: 'portable' }) },
  },
  'area/entity': {
    meets: { chain: loop(through(supply('GI-VIB'))) },
    warns: {},
    fails: { chain: loop({ cableLength: answer(190) }) },
    'cannot tell': { chain: loop({ transducer: changed(acc, { certificateCi: 'unknown' }) }) },
  },
  'area/column': {
    meets: {},
    'cannot tell': { chain: loop(through(changed(zener, { certificateCoIic: '650 nF' }))) },
  },
  'area/earth': {
    meets: {},
    fails: { area: inArea({ earthResistance: '1 ohm' }) },
    'cannot tell': { area: inArea({ earthResistance: 'unknown' }) },
  },
  'area/multicore': {
    meets: { area: inArea({ cableNeighbours: 'type A' }) },
    'cannot tell': { area: inArea({ cableNeighbours: 'type C' }) },
  },
  'area/conditions': {
    meets: {},
    'cannot tell': { chain: loop({ transducer: changed(acc, { certificateConditions: undefined }) }) },
  },
};

function caseOf({ chain, area }: Subject) {
  return { point: area ?? inArea({}), prediction: prediction(measuringChain(chain ?? loop())), policy: usualPolicy };
}

function sound(id: string, judgement: Judgement): void {
  const sentence = `${reason(judgement)} ${judgement.needs ?? ''}`;
  expect(judgement.rule).toBe(id);
  expect(sentence).not.toMatch(/NaN|undefined|Infinity|∞|\bsafe\b|\bOK\b/);
  if (judgement.outcome === 'fails') expect(judgement.needs, sentence).toBeDefined();
  if (judgement.outcome === 'meets') expect(judgement.needs, sentence).toBeUndefined();
  if (judgement.outcome === 'cannot tell') expect(judgement.missing?.length, sentence).toBeGreaterThan(0);
}

test.each(areaRules.map((rule) => [rule.id, rule] as const))(
  '%s: one loop that meets it, one that does not',
  (id, rule) => {
    const row = rows[id];
    expect(row, `${id} has no row in the table above`).toBeDefined();
    expect(row!.fails ?? row!['cannot tell']).toBeDefined();
    for (const outcome of outcomes) {
      const subject = row![outcome];
      if (subject === undefined) continue;
      const judgements = rule.judge(caseOf(subject));
      expect(judgements.length).toBeGreaterThan(0);
      for (const each of judgements) sound(id, each);
      const worst = outcomes.find((each) => judgements.some((judgement) => judgement.outcome === each));
      expect(worst, judgements.map((each) => reason(each)).join('\n')).toBe(outcome);
    }
  },
);

test('no row is left of a rule that is gone; every rule has its own id, sources and a remedy', () => {
  const ids = areaRules.map((rule) => rule.id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(Object.keys(rows).sort()).toEqual([...ids].sort());
  for (const rule of areaRules) {
    expect(rule.sources.length, rule.id).toBeGreaterThan(0);
    expect(rule.remedy.length, rule.id).toBeGreaterThan(0);
  }
});

test('every rule is silent where a point lies in no classified area', () => {
  const outside = { ...caseOf({}), point: point({}) };
  expect(areaRules.flatMap((rule) => rule.judge(outside))).toEqual([]);
});

const judgedOf = (subject: Subject) => {
  const given = caseOf(subject);
  const judgements = areaRules.flatMap((rule) => rule.judge(given));
  return judgedArea(areaComparison(given.point, given.prediction.chain)!, judgements);
};
const failing = (subject: Subject) => [
  ...new Set(
    judgedOf(subject)
      .judgements.filter((each) => each.outcome === 'fails')
      .map((each) => each.rule),
  ),
];

test.each([
  'certificateUi',
  'certificateIi',
  'certificatePi',
  'certificateCi',
  'certificateLi',
  'certificateNumber',
  'certificateMarking',
])('law: without %s of the transducer nothing is proven, and it is named', (name) => {
  const judged = judgedOf({ chain: loop({ transducer: changed(acc, { [name]: 'unknown' }) }) });
  expect(judged.wording).toBe(notProvenWording);
  const missing = judged.judgements.flatMap((each) => each.missing ?? []).map((each) => each.what);
  expect(missing).toContain(words(name));
});

test.each([
  'certificateUo',
  'certificateIo',
  'certificatePo',
  'certificateCoIic',
  'certificateLoIic',
  'certificateNumber',
])('law: without %s of the barrier nothing is proven', (name) => {
  expect(judgedOf({ chain: loop(through(changed(zener, { [name]: 'unknown' }))) }).wording).toBe(notProvenWording);
});

test('negative: a supply on the field side of the barrier fails, on the card side it does not', () => {
  const velocity = transducer('LPV-25X');
  const order = (...inLine: ChainParts['inLine']) =>
    failing({ chain: loop({ transducer: velocity, input: input('AI-16'), inLine }) });
  expect(order(zener, supply('LOOP-24'))).toEqual([]);
  expect(order(supply('LOOP-24'), zener)).toEqual(['area/barrier']);
});

test('a junction box declared as simple apparatus adds nothing; one that is not declared is asked about', () => {
  const box = supply('JB-IS');
  expect(judgedOf({ chain: loop(through(box, zener)) }).entity).toEqual(judgedOf({}).entity);
  const undeclared = judgedOf({ chain: loop(through(changed(box, { simpleApparatus: undefined }), zener)) });
  expect(undeclared.wording).toBe(notProvenWording);
  expect(undeclared.judgements.flatMap((each) => each.missing ?? [])).toContainEqual({
    of: box.sheet.of,
    what: 'certificate, or declaration as simple apparatus',
  });
});

test('negative: two barriers in a row are not compared as if they were one', () => {
  expect(judgedOf({ chain: loop(through(zener, supply('GI-VIB'))) }).wording).toBe(notProvenWording);
});

test('a stricter column serves a lesser group, never the other way', () => {
  const onlyIic = changed(zener, {
    certificateCoIib: undefined,
    certificateCoIia: undefined,
    certificateLoIib: undefined,
    certificateLoIia: undefined,
  });
  const inB = judgedOf({ chain: loop(through(onlyIic)), area: inArea({ group: 'IIB' }) });
  expect(inB.column).toEqual(answer('IIC'));
  const onlyIib = changed(zener, { certificateCoIic: undefined, certificateLoIic: undefined });
  expect(judgedOf({ chain: loop(through(onlyIib)) }).wording).toBe(notProvenWording);
});

test('a flameproof transducer is not compared as if it were intrinsically protected', () => {
  const flameproof = changed(acc, { certificateMarking: 'Ex db IIC T4 Gb' });
  const judged = judgedOf({ chain: loop({ transducer: flameproof, inLine: [] }) });
  expect(judged.judgements.filter((each) => each.outcome === 'fails')).toEqual([]);
  expect(judged.wording).toBe(notProvenWording);
});

test('zone and group of different atmospheres are a contradiction of the drawing', () => {
  expect(failing({ area: inArea({ zone: '21' }) })).toContain('area/group');
  expect(failing({ area: inArea({ group: 'IIIC' }) })).toContain('area/group');
});

test('a certificate that names no ambient holds from −20 to 40 °C, and not on a hot surface', () => {
  const silent = changed(acc, { certificateAmbient: undefined });
  expect(failing({ chain: loop({ transducer: silent }) })).toEqual(['area/ambient']);
  expect(failing({ chain: loop({ transducer: silent }), area: inArea({}, { surface: '40 °C' }) })).toEqual([]);
});

test('the declaration of the cable is needed where the values of the standard would not do, and then only', () => {
  const warned = (subject: Subject) =>
    judgedOf(subject).judgements.filter((each) => each.rule === 'area/entity' && each.outcome === 'warns').length;
  expect(warned({})).toBe(1);
  expect(warned({ chain: loop({ cableLength: answer(147) }) })).toBe(0);
  expect(warned({ chain: loop(through(supply('GI-VIB'))) })).toBe(0);
});
