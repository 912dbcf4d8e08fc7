import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coincidences } from './coincidences.ts';
import { waterPump } from './example-pump.ts';
import { frequencyTable } from './frequency-table.ts';
import { readTrain, type TypedElement, type TypedTrain } from './reading.ts';

const cellOf = (typed: TypedTrain, line: string, state: string) =>
  frequencyTable(readTrain(typed))
    .rows.find((row) => row.line.name === line)!
    .cells.find((cell) => cell.state === state)!;

const withMotor = (
  changed: Readonly<Record<string, string | number>>,
  operation = waterPump.operation,
): TypedTrain => ({
  ...waterPump,
  operation,
  elements: { ...waterPump.elements, motor: { ...waterPump.elements.motor, ...changed } as TypedElement },
});

test('an unknown torque law leaves the speed between slip at rated load and none, and twice line as it is', () => {
  const unknown = withMotor({ 'torque-law': 'unknown' });
  const speed = cellOf(unknown, 'pump/1x', 'lowest');
  expect(speed.frequency).toEqual({ known: false, missing: [{ of: 'P-301/motor', what: 'torque law' }] });
  expect(speed.between!.low).toBeCloseTo(12.5 - 14 / 60, 12);
  expect(speed.between!.high).toBeCloseTo(12.5, 12);
  expect(cellOf(unknown, 'motor/twice-line', 'lowest').frequency).toEqual({ known: true, value: 50 });
  // At rated line frequency the name plate says the slip, whatever the law.
  expect(cellOf(unknown, 'motor/pole-pass', 'highest').frequency).toMatchObject({ known: true });
});

test('poles that are unknown leave twice line known and name themselves everywhere else', () => {
  const unknown = withMotor({ poles: 'unknown' });
  expect(cellOf(unknown, 'motor/twice-line', 'highest').frequency).toEqual({ known: true, value: 100 });
  const missing = { known: false, missing: [{ of: 'P-301/motor', what: 'poles' }] };
  expect(cellOf(unknown, 'pump/1x', 'highest').frequency).toEqual(missing);
  expect(cellOf(unknown, 'motor/pole-pass', 'highest').frequency).toEqual(missing);
});

test('law: the table by line frequency and the table by the speed that follows from it are one', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('constant', 'linear', 'quadratic'),
      fc.double({ min: 10, max: 50, noNaN: true }),
      (law, line) => {
        const byLine = frequencyTable(
          readTrain(withMotor({ 'torque-law': law }, { motor: 'motor', frequency: `${line} Hz` })),
        );
        const speed = byLine.rows.find((row) => row.line.name === 'pump/1x')!.cells[0]!.frequency;
        if (!speed.known) throw new Error('known');
        const operation = { shaft: 'pump', speed: `${speed.value} Hz` };
        const byShaft = frequencyTable(readTrain(withMotor({ 'torque-law': law }, operation)));
        for (const [index, row] of byLine.rows.entries()) {
          const [one, other] = [row.cells[0]!.frequency, byShaft.rows[index]!.cells[0]!.frequency];
          if (!one.known || !other.known) throw new Error(row.line.name);
          expect(Math.abs(one.value - other.value), row.line.name).toBeLessThan(1e-8);
        }
      },
    ),
    { numRuns: 60 },
  );
});

test('law: every line scales with shaft speed except what hangs on line frequency, slip or a constant', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 20, noNaN: true }),
      fc.double({ min: 0.5, max: 3, noNaN: true }),
      (speed, factor) => {
        const at = (f: number) => frequencyTable(readTrain(withMotor({}, { shaft: 'pump', speed: `${f} Hz` }))).rows;
        const [one, other] = [at(speed), at(speed * factor)];
        for (const [index, row] of one.entries()) {
          const turnsOnly = row.line.form.known && row.line.form.value.every((term) => term.of.kind === 'rotation');
          const [low, high] = [row.cells[0]!.frequency, other[index]!.cells[0]!.frequency];
          if (!turnsOnly || !low.known || !high.known) continue;
          expect(Math.abs(high.value / low.value / factor - 1), row.line.name).toBeLessThan(1e-9);
        }
      },
    ),
    { numRuns: 40 },
  );
});

test('law: outer + inner ring = n · speed and cage = outer ring / n for the bearings of a whole train, at every state', () => {
  for (const [bearing, n, shaft] of [
    ['pump-drive-end', 12, 'pump'],
    ['motor-drive-end', 8, 'motor'],
  ] as const) {
    for (const state of ['lowest', 'highest']) {
      const value = (line: string) => {
        const { frequency } = cellOf(waterPump, line, state);
        return frequency.known ? frequency.value : Number.NaN;
      };
      const sum = value(`${bearing}/outer-ring`) + value(`${bearing}/inner-ring`);
      expect(sum).toBeCloseTo(n * value(`${shaft}/1x`), 9);
      expect(value(`${bearing}/outer-ring`)).toBeCloseTo(n * value(`${bearing}/cage`), 9);
    }
  }
});

test('a range from standstill names what happens there and reports no coincidences of zeros', () => {
  const fromRest = { ...waterPump, operation: { shaft: 'pump', speed: '0..1486 r/min' } };
  const names = (typed: TypedTrain) =>
    coincidences(readTrain(typed)).map(({ a, b }) => `${a.harmonic} ${a.line.name} ${b.harmonic} ${b.line.name}`);
  const moving = { ...waterPump, operation: { shaft: 'pump', speed: '20..1486 r/min' } };
  expect(names(fromRest).sort()).toEqual(names(moving).sort());
  const constant = withMotor({ 'torque-law': 'constant' }, { motor: 'motor', frequency: '0..50 Hz' });
  expect(cellOf(constant, 'pump/1x', 'lowest').frequency).toEqual({
    known: false,
    missing: [{ of: 'P-301/motor', what: 'a line frequency above that of the slip' }],
  });
});

test('a range that is not stated leaves every line unknown and says so', () => {
  const table = frequencyTable(readTrain({ ...waterPump, operation: { motor: 'motor', frequency: 'unknown' } }));
  const missing = { known: false, missing: [{ of: 'P-301', what: 'operating line frequency' }] };
  expect(table.rows.find((row) => row.line.name === 'pump/1x')!.cells[0]!.frequency).toEqual(missing);
  expect(table.rows[0]!.range).toEqual(missing);
  // The carrier does not hang on the operation.
  expect(table.rows.find((row) => row.line.name === 'motor/carrier')!.cells[0]!.frequency).toEqual({
    known: true,
    value: 4000,
  });
});
