import { expect, test } from 'vitest';
import { showMeasure } from '../finding/measure.ts';
import { waterPump } from './example-pump.ts';
import { trainFindings } from './findings.ts';
import { frequencyTable } from './frequency-table.ts';
import { readTrain, type Typed, type TypedElement } from './reading.ts';
import { bearingTrain, beltTrain, gearTrain, motorTrain } from './rules/example-trains.ts';

const rulesOf = (typed: Parameters<typeof readTrain>[0]) => trainFindings(readTrain(typed)).map((each) => each.rule);
const first = (typed: Parameters<typeof readTrain>[0], rule: string) =>
  trainFindings(readTrain(typed)).find((each) => each.rule === rule);

test('a train without contradictions has no findings', () => {
  expect(trainFindings(readTrain(waterPump))).toEqual([]);
});

test('bad input: a slip of 14 % typed as a speed is refused with the unit it has', () => {
  expect(() => readTrain(motorTrain({ 'rated-slip': '14 %' }))).toThrow(/elements\/motor\/rated-slip=14 %/);
});

test('bad input: 980 r/min with 4 poles asks for 6 poles', () => {
  expect(
    showMeasure(first(motorTrain({ 'rated-speed': '980 r/min' }), 'machine/poles-against-speed')!.asks ?? ''),
  ).toBe('Has the motor 6 poles?');
});

test('bad input: a name plate of 1486 typed in hertz is 60 times the speed of the train', () => {
  expect(rulesOf(motorTrain({ 'rated-speed': '1486 Hz', 'rated-slip': '14 r/min' }))).toContain(
    'machine/hertz-for-revolutions',
  );
});

test('bad input: a motor on the mains run above synchronous speed, and one far below', () => {
  const mains = (speed: string) => ({
    of: 'P-1',
    shafts: ['motor'],
    elements: { motor: { kind: 'induction-motor', on: 'motor', poles: 4, supply: 'mains', 'line-frequency': '50 Hz' } },
    operation: { shaft: 'motor', speed },
  });
  expect(rulesOf(mains('1486 r/min'))).toEqual([]);
  expect(rulesOf(mains('1520 r/min'))).toEqual(['machine/slip-above-zero']);
  expect(rulesOf(mains('1500 r/min'))).toEqual(['machine/slip-above-zero']);
  expect(rulesOf(mains('980 r/min'))).toEqual(['machine/poles-against-speed']);
  expect(rulesOf(motorTrain({ 'rated-slip': '-3 r/min', 'rated-speed': '1503 r/min' }))).toContain(
    'machine/slip-above-zero',
  );
});

test('bad input: tooth counts exchanged are recognised from the stated ratio', () => {
  const found = first(
    gearTrain({ 'driving-teeth': 84, 'driven-teeth': 25, ratio: 3.36 }),
    'machine/ratio-against-teeth',
  )!;
  expect(showMeasure(found.asks ?? '')).toBe('Are driving and driven wheel exchanged?');
  expect(rulesOf(gearTrain({ ratio: 3.3768 }))).toEqual([]);
  expect(rulesOf(gearTrain({ ratio: 3.378 }))).toEqual(['machine/ratio-against-teeth']);
});

test('bad input: contact angle as radians, per cent, or beyond a right angle', () => {
  expect(() => readTrain(bearingTrain({ 'contact-angle': '15 %' }))).toThrow(/contact-angle=15 %/);
  expect(rulesOf(bearingTrain({ 'contact-angle': '40 rad' }))).toEqual(['machine/contact-angle-plausible']);
  expect(rulesOf(bearingTrain({ 'contact-angle': '-15 deg' }))).toEqual(['machine/contact-angle-plausible']);
  expect(rulesOf(bearingTrain({ 'contact-angle': '0.698 rad' }))).toEqual([]);
  expect(rulesOf(bearingTrain({ 'contact-angle': '90 deg' }))).toEqual([]);
  expect(
    showMeasure(first(bearingTrain({ 'contact-angle': '0.698 deg' }), 'machine/contact-angle-plausible')!.asks ?? ''),
  ).toContain('39.99°');
  expect(() => readTrain(bearingTrain({ 'contact-angle': '0.698' }))).toThrow(/no unit/);
});

test('a slip of a belt that is stated is not asked for; one that is not is', () => {
  const { slip: _stated, ...without } = beltTrain({}).elements.link as Readonly<Record<string, Typed>>;
  expect(rulesOf(beltTrain({}))).toEqual([]);
  const unstated = { ...beltTrain({}), elements: { link: { ...without, kind: 'belt-drive' } as TypedElement } };
  expect(rulesOf(unstated)).toEqual(['machine/belt-slip-not-stated']);
  const table = frequencyTable(readTrain(unstated));
  const driven = table.rows.find((row) => row.line.name === 'machine/1x')!.cells[0]!;
  expect(driven.frequency.known && driven.between!.high).toBeCloseTo(
    driven.frequency.known ? driven.frequency.value : 0,
    12,
  );
  expect(driven.between!.low / driven.between!.high).toBeCloseTo(0.98, 12);
});

test('law: a doubt never changes a frequency, and an unknown count never becomes one', () => {
  const table = frequencyTable(readTrain(gearTrain({ 'driven-teeth': 'unknown' })));
  const mesh = table.rows.find((row) => row.line.name === 'link/mesh')!;
  expect(mesh.cells[0]!.frequency).toEqual({ known: false, missing: [{ of: 'G-1/link', what: 'driven teeth' }] });
  expect(table.shafts[1]!.ratio).toEqual({ known: false, missing: [{ of: 'G-1/link', what: 'driven teeth' }] });
});
