import { expect, test } from 'vitest';
import { kinds } from '../quantity/kinds.ts';
import { waterPump } from './example-pump.ts';
import { machineElementKinds } from './kinds.ts';
import { readTrain, type TypedElement, type TypedTrain } from './reading.ts';
import { shaftLines } from './shaft.ts';

const changed = (name: string, element: Partial<Record<string, string | number>>): TypedTrain => ({
  ...waterPump,
  elements: { ...waterPump.elements, [name]: { ...waterPump.elements[name], ...element } as TypedElement },
});

test('refuses with place and suggestion: a kind, a field, a shaft, a value', () => {
  expect(() => readTrain(changed('motor', { kind: 'induction-moter' }))).toThrow(
    /elements\/motor\/kind=induction-moter.*Did you mean 'induction-motor'/,
  );
  expect(() => readTrain(changed('motor', { pols: 4 }))).toThrow(/elements\/motor\/pols.*Did you mean 'poles'/);
  expect(() => readTrain(changed('impeller', { on: 'pmp' }))).toThrow(/Did you mean 'pump'/);
  expect(() => readTrain(changed('impeller', { vanes: 0 }))).toThrow(/elements\/impeller\/vanes=0/);
  expect(() => readTrain(changed('motor', { 'line-frequency': '50' }))).toThrow(/line-frequency=50/);
});

test('refuses what cannot stand: two roles on one shaft, a link to what stands still, names twice, no motor', () => {
  expect(() => readTrain(changed('coupling', { from: 'pump' }))).toThrow(/different shaft/);
  expect(() => readTrain(changed('coupling', { from: 'fixed' }))).toThrow(/a shaft that turns/);
  expect(() => readTrain({ ...waterPump, shafts: ['motor', 'pump', 'pump'] })).toThrow(/shaft of P-301 once/);
  expect(() => readTrain({ ...waterPump, shafts: ['motor', 'pump', 'fixed'] })).toThrow(/does not turn/);
  expect(() => readTrain({ ...waterPump, operation: { motor: 'impeller', frequency: '25..50 Hz' } })).toThrow(
    /a motor of P-301: motor/,
  );
  const states = { highest: '50 Hz' };
  expect(() => readTrain({ ...waterPump, operation: { motor: 'motor', frequency: '25..50 Hz', states } })).toThrow(
    /state of P-301 once/,
  );
  expect(() => readTrain(changed('pump-drive-end', { inner: 'pump' }))).toThrow(/either 'on'/);
});

test('a bearing named by its two rings may stand on two shafts, on one, or on none that turns', () => {
  const { on: _on, ...drawing } = waterPump.elements['pump-drive-end']! as TypedElement;
  const both = (inner: string, outer: string) =>
    readTrain({
      ...waterPump,
      elements: { ...waterPump.elements, 'pump-drive-end': { ...drawing, inner, outer } as TypedElement },
    });
  expect(both('pump', 'fixed').elements).toEqual(readTrain(waterPump).elements);
  expect(both('motor', 'pump').elements).toHaveLength(5);
  expect(() => both('fixed', 'fixed')).toThrow(/on at least one shaft/);
});

test('a kind that stands twice is refused by the running program and by the compiler', () => {
  const one = { kind: 'gear' } as const;
  // @ts-expect-error: 'gear' stands twice
  expect(() => kinds(one, one)).toThrow(/stands once/);
  expect(kinds(one, { kind: 'belt' } as const)).toHaveLength(2);
});

test('every kind has a name, roles, a source, and line names that no shaft uses', () => {
  const ofShafts = shaftLines('s').map((line) => line.name);
  expect(new Set(machineElementKinds.map((kind) => kind.kind)).size).toBe(machineElementKinds.length);
  for (const kind of machineElementKinds) {
    // What stands on no shaft couples nothing.
    if (kind.places.length === 0) expect(kind.relations({ of: '', values: {} } as never)).toMatchObject({ value: [] });
    expect(kind.sources.length).toBeGreaterThan(0);
    const fields = Object.keys(kind.sheet);
    expect(fields.some((field) => (kind.places as readonly string[]).includes(field))).toBe(false);
  }
  const names = readTrain(waterPump).elements.flatMap((element) => {
    const kind = machineElementKinds.find((each) => each.kind === element.kind)!;
    return (kind.lines as (...args: unknown[]) => readonly { name: string }[])(element.sheet, {
      element: element.name,
      shafts: element.shafts,
    }).map((line) => line.name);
  });
  for (const name of names) expect(ofShafts).not.toContain(name);
});
