import { expect, test } from 'vitest';
import { input, mount, parts, point, supply, transducer } from '../../../../evidence/bench.ts';
import { measuringChain } from '../chain/chain.ts';
import { prediction } from '../chain/prediction.ts';
import { barrierEarth } from '../chain/rules/barrier-earth.ts';
import { caseGrounding } from '../chain/rules/case-grounding.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import { usualPolicy } from '../demand/policy.ts';
import { showMeasure } from '../finding/measure.ts';
import { type Fields, fieldOf, notStated, pointDecimals, type Sheet, stated } from '../quantity/index.ts';
import { calculate } from '../working/index.ts';
import { compared } from '../working/printed.ts';
import { wiringEvidence } from './evidence.ts';
import {
  everyGroundLoop,
  humAsVibration,
  type PlantWiring,
  plantWiring,
  separationSheet,
  type WiredPoint,
  wiringRules,
  wiringSheet,
} from './index.ts';

/** A sheet filled in as a file would state it. */
function sheetOf<F extends Fields>(fields: F, of: string, entries: Readonly<Record<string, string>>): Sheet<F> {
  const values = Object.fromEntries(
    Object.entries(entries).map(([name, text]) => {
      const field = fieldOf(fields[name]!);
      return [name, text === 'unknown' ? notStated : stated(field.read(text, pointDecimals), text)];
    }),
  );
  return { of, values: values as Sheet<F>['values'] };
}

const line = { see: 'line', at: '49 Hz', smallest: '0.5 mm/s rms', largest: '10 mm/s rms', spacing: '0.5 Hz' } as const;
const highLine = { ...line, at: '148.6 Hz' };
const rack = { input: input('ONL-24') };
const grounded = { ...rack, transducer: transducer('ACC-50M') };
const isolated = { ...rack, transducer: transducer('ACC-100') };

interface Words {
  readonly chain?: Parameters<typeof parts>[0];
  readonly says?: Readonly<Record<string, string>>;
  readonly name?: string;
  readonly machine?: string;
  readonly installation?: MeasuringPoint['installation'];
  readonly target?: Parameters<typeof point>[0][string];
}

function wired({
  chain = isolated,
  says,
  name = 'bench',
  machine = 'M-1',
  installation = 'online',
  target = line,
}: Words) {
  const at: MeasuringPoint = { ...point({ line: target }), of: `${machine}/${name}`, name, machine, installation };
  const whole = measuringChain(parts(chain));
  const judgements = [caseGrounding, barrierEarth].flatMap((rule) =>
    rule.judge({ point: at, prediction: prediction(whole), policy: usualPolicy }),
  );
  const each: WiredPoint = {
    point: at,
    chain: whole,
    judgements,
    ...(says === undefined ? {} : { wiring: sheetOf(wiringSheet, at.of, says) }),
  };
  return each;
}

const wiringOf = (...words: readonly Words[]): PlantWiring => plantWiring(words.map(wired), undefined);
const rulesOf = ({ findings }: PlantWiring) => findings.map((each) => `${each.rule} ${each.weight}`);
const membersOf = ({ loops }: PlantWiring) => loops.map((loop) => loop.members.map((each) => each.name));

test('law: a case that is the signal ground, on a machine, on a rack: one loop, its members named in order', () => {
  const found = wiringOf({ chain: grounded });
  expect(found.loops.length).toBe(1);
  expect(found.loops[0]).toMatchObject({ through: 'signal', points: ['M-1/bench'], byDesign: false });
  expect(new Set(membersOf(found)[0])).toEqual(
    new Set([
      'case of M-1/bench on the machine',
      'signal ground on the case of M-1/bench',
      'return core of M-1/bench',
      'earth of the common of M-1/bench',
      `protective earth of earth bar of ${found.graph.nodes.find((each) => each.is === 'cabinet earth bar')!.id.slice(13)}`,
      'protective earth of frame of M-1',
    ]),
  );
  expect(showMeasure(found.loops[0]!.remedy[0] ?? '')).toBe('a case-isolated transducer');
  expect(found.loops[0]!.resistance.known).toBe(false);
  // The rule of the chain refuses it already: no second finding.
  expect(rulesOf(found)).toEqual([]);
});

test('law: an isolated case, an isolating stud, a collector that floats, a galvanic isolator: no loop', () => {
  expect(wiringOf({}).loops).toEqual([]);
  expect(wiringOf({ chain: { ...grounded, mount: mount('isolating-stud') } }).loops).toEqual([]);
  expect(wiringOf({ chain: { transducer: transducer('ACC-50M') }, installation: 'portable' }).loops).toEqual([]);
  const names = wiringOf({ chain: { ...grounded, mount: mount('isolating-stud') } }).graph.isolations;
  expect(names.map((each) => each.by)).toContain('isolating mount');
});

test('law: each loop opened by the first of its remedies leaves one loop less', () => {
  const both = wiringOf(
    { chain: grounded, says: { screenEarthed: 'both' } },
    { chain: grounded, name: 'other', says: { screenEarthed: 'cabinet' } },
  );
  // Two grounded cases, and one screen that touches the case and the cabinet.
  expect(both.loops.length).toBe(3);
  const mended = wiringOf(
    { chain: isolated, says: { screenEarthed: 'both' } },
    { chain: grounded, name: 'other', says: { screenEarthed: 'cabinet' } },
  );
  expect(mended.loops.length).toBe(2);
});

test('negative: a collector on its charger is no longer one that floats, and then blocks', () => {
  const chain = { transducer: transducer('ACC-50M') };
  const charging = wiringOf({ chain, installation: 'portable', says: { inputEarthed: 'yes' } });
  expect(rulesOf(charging)).toEqual(['wiring/one-earth blocks-issue']);
  expect(wiringOf({ chain, installation: 'online', says: { inputEarthed: 'no' } }).loops).toEqual([]);
});

test('a shunt-diode barrier earths the line: isolated passes, and with an input that is earthed too a loop stands', () => {
  const barrier = { ...isolated, inLine: [supply('ZB-28')] };
  expect(wiringOf({ chain: barrier }).loops).toEqual([]);
  const twice = wiringOf({ chain: barrier, says: { inputEarthed: 'yes' } });
  expect(rulesOf(twice)).toEqual(['wiring/one-earth blocks-issue']);
  expect(twice.loops[0]!.remedy).toContain('a galvanic isolator in place of the barrier');
});

/** One plant that passes each rule, one that fails it. */
const rows: Readonly<Record<string, { readonly passes: readonly Words[]; readonly fails: readonly Words[] }>> = {
  'wiring/one-earth': {
    passes: [{ chain: isolated }],
    fails: [{ chain: { ...isolated, inLine: [supply('ZB-28')] }, says: { inputEarthed: 'yes' } }],
  },
  'wiring/screen-ends': {
    passes: [{ says: { screenEarthed: 'both', equipotentialBond: 'yes' } }],
    fails: [{ says: { screenEarthed: 'both' } }],
  },
  'wiring/screen-earthed': {
    passes: [{ says: { screenEarthed: 'cabinet' } }],
    fails: [{ says: { screenEarthed: 'cabinet', screenCutAt: 'junction box' } }],
  },
  'wiring/unknown-joint': {
    passes: [{ says: {} }],
    fails: [{ says: { inputEarthed: 'unknown' } }],
  },
  'wiring/hum': {
    passes: [{ chain: grounded, says: { earthVoltage: '20 mV rms', mains: '50 Hz' }, target: highLine }],
    fails: [{ chain: grounded, says: { earthVoltage: '20 mV rms', mains: '50 Hz' } }],
  },
  'wiring/separation': {
    passes: [{ says: { powerCable: 'low voltage', powerDistance: '300 mm' } }],
    fails: [{ says: { powerCable: 'low voltage', powerDistance: '299 mm' } }],
  },
};

test.each(wiringRules.map((rule) => [rule.id, rule] as const))(
  '%s: a plant that passes, one that fails',
  (id, rule) => {
    const row = rows[id];
    expect(row, `${id} has no row in the table above`).toBeDefined();
    const subject = (words: readonly Words[]) => {
      const points = words.map(wired);
      const { graph, loops } = plantWiring(points, undefined);
      return { points, graph, loops };
    };
    expect(rule.findings(subject(row!.passes))).toEqual([]);
    const found = rule.findings(subject(row!.fails));
    expect(found.length).toBeGreaterThan(0);
    for (const each of found) {
      expect(each.rule).toBe(id);
      expect(each.remedy.length).toBeGreaterThan(0);
      expect(each.sources.length).toBeGreaterThan(0);
    }
    expect(Object.keys(rows).sort()).toEqual(wiringRules.map((each) => each.id).sort());
  },
);

test('a screen joined to the box as well as to the cabinet is a loop, with the box on the machine or on its own earth', () => {
  for (const boxOnMachine of ['yes', 'no']) {
    const found = wiringOf({ says: { screenEarthed: 'cabinet', screenOnBox: 'yes', boxOnMachine } });
    expect(rulesOf(found)).toEqual(['wiring/screen-ends blocks-issue']);
    expect(showMeasure(found.loops[0]!.remedy[0] ?? '')).toBe('carry the screen through the box insulated');
  }
});

test('a screen on a case set on an isolating mount touches no earth there', () => {
  const chain = { ...isolated, mount: mount('isolating-stud') };
  expect(wiringOf({ chain, says: { screenEarthed: 'cabinet', screenOnCase: 'yes' } }).loops).toEqual([]);
  expect(rulesOf(wiringOf({ says: { screenEarthed: 'cabinet', screenOnCase: 'yes' } }))).toEqual([
    'wiring/screen-ends blocks-issue',
  ]);
});

test('negative: an unknown bond or end is asked about, never taken for good', () => {
  expect(rulesOf(wiringOf({ says: { screenEarthed: 'both', equipotentialBond: 'unknown' } }))).toEqual([
    'wiring/screen-ends question',
  ]);
  expect(rulesOf(wiringOf({ says: { screenEarthed: 'unknown' } }))).toEqual(['wiring/screen-earthed question']);
  expect(rulesOf(wiringOf({ says: { powerCable: 'low voltage' } }))).toEqual(['wiring/separation question']);
});

test('a loop closes over the bond where there is one', () => {
  const found = wiringOf({ says: { screenEarthed: 'both', equipotentialBond: 'yes' } });
  expect(found.loops.length).toBe(1);
  expect(found.loops[0]!.byDesign).toBe(true);
  expect(membersOf(found)[0]).toContain('equipotential bond of M-1');
});

test('negative: the earthing of two machines and their bonds alone are no ground loop', () => {
  const says = { screenEarthed: 'cabinet', equipotentialBond: 'yes' };
  expect(wiringOf({ says }, { machine: 'M-2', says }).loops).toEqual([]);
});

test('every way a loop closes holds at least the independent ones', () => {
  const points = [{ chain: grounded }, { chain: grounded, machine: 'M-2' }].map(wired);
  const { graph, loops } = plantWiring(points, undefined);
  expect(loops.length).toBe(2);
  // Each by itself, and from one machine over the shared bar to the other.
  const every = everyGroundLoop(graph, points);
  expect(every.more).toBe(false);
  expect(every.loops.length).toBe(3);
});

test('separation: the distances of the owner take the place of those of practice', () => {
  const points = [wired({ says: { powerCable: 'low voltage', powerDistance: '400 mm' } })];
  const own = sheetOf(separationSheet, 'separation', { lowVoltage: '600 mm', source: 'site standard E-12' });
  expect(plantWiring(points, undefined).findings).toEqual([]);
  const [found] = plantWiring(points, own).findings;
  expect(showMeasure(found?.limit ?? '')).toMatch(/600 mm.*site standard E-12/);
});

test('a refused loop says what each millivolt reads as: 0.31 mm/s at 50 Hz on 100 mV/g', () => {
  const chain = { ...isolated, inLine: [supply('ZB-28')] };
  const [found] = wiringOf({ chain, says: { inputEarthed: 'yes', mains: '50 Hz' } }).findings;
  expect(showMeasure(found?.because ?? '')).toMatch(/0\.312\d? mm\/s rms/);
});

test('law: a plant of thousands of points is searched in a breath, one loop for each grounded case', () => {
  const [one, other] = [wired({ chain: grounded }), wired({ says: { screenEarthed: 'cabinet' } })];
  const many = Array.from({ length: 3000 }, (_, place): WiredPoint => {
    const each = place % 2 === 0 ? one! : other!;
    return { ...each, point: { ...each.point, of: `M-${place % 50}/${place}`, machine: `M-${place % 50}` } };
  });
  const started = performance.now();
  const { loops, findings } = plantWiring(many, undefined);
  expect(loops.length).toBe(1500);
  expect(findings).toEqual([]);
  expect(performance.now() - started).toBeLessThan(10_000);
});

test('printed: 1 mV of hum at 50 Hz on 100 mV/g (practice of the trade)', () => {
  for (const each of wiringEvidence.flatMap(compared)) expect(each.within, JSON.stringify(each)).toBe(true);
});

test('law: hum grows with the voltage, falls with the sensitivity; negative: the detector is kept, 60 Hz reads less', () => {
  const read = (given: Readonly<Record<string, string>>) =>
    Object.fromEntries(calculate(humAsVibration, given).results.map((each) => [each.name, each.json])) as Record<
      string,
      { value: number; detector: string }
    >;
  const one = read({ voltage: '1 mV rms', frequency: '50 Hz', sensitivity: '100 mV/g' });
  const ten = read({ voltage: '10 mV peak', frequency: '50 Hz', sensitivity: '500 mV/g' });
  expect(ten.velocity!.value / one.velocity!.value).toBeCloseTo(2, 12);
  expect(ten.velocity!.detector).toBe('peak');
  const us = read({ voltage: '1 mV rms', frequency: '60 Hz', sensitivity: '100 mV/g' });
  expect(us.velocity!.value / one.velocity!.value).toBeCloseTo(50 / 60, 12);
  expect(us.displacement!.value / one.displacement!.value).toBeCloseTo((50 / 60) ** 2, 12);
});
