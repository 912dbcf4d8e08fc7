import fc from 'fast-check';
import { expect, test } from 'vitest';
import { answer, type Level, level, notStated, si, stated, unanswered } from '../quantity/index.ts';
import { calculate } from '../working/index.ts';
import { asAcceleration, motionWindow, motionWindowWorking, windowSetPoints } from './motion-window.ts';

const stroke = (millimetres: number): Level<'displacement'> =>
  level('displacement', millimetres / 1000, 'peak-to-peak') as Level<'displacement'>;

test('law: in acceleration the window keeps its proportions, whatever the frequency, and rises with its square', () => {
  const millimetres = fc.double({ min: 1, max: 20, noNaN: true });
  fc.assert(
    fc.property(millimetres, fc.double({ min: 5, max: 30, noNaN: true }), (wanted, frequency) => {
      const { alertLow, alertHigh } = motionWindow(stroke(wanted), 0.05 * (wanted / 1000), stroke(2 * wanted));
      const low = asAcceleration(alertLow, frequency).value;
      const high = asAcceleration(alertHigh, frequency).value;
      expect(high / low).toBeCloseTo(1.05 / 0.95, 10);
      const twice = asAcceleration(alertLow, 2 * frequency).value;
      expect(twice / low).toBeCloseTo(4, 10);
    }),
  );
});

test('trap: a stroke typed as amplitude and read as peak-to-peak halves every set point', () => {
  const at = (written: string) =>
    calculate(motionWindowWorking, {
      wanted: written,
      within: '0.5 mm',
      trip: '20 mm pp',
      frequency: '920 r/min',
    }).results.find(({ name }) => name === 'acceleration-low')!.json as { value: number };
  expect(at('9 mm pp').value / at('9 mm peak').value).toBeCloseTo(8.5 / 17, 12);
});

test('negative: a window of no width, wider than the motion, or a trip inside it, is refused by name', () => {
  const given = { wanted: '9 mm pp', within: '0.5 mm', trip: '10.5 mm pp', frequency: '920 r/min' };
  expect(() => calculate(motionWindowWorking, { ...given, within: '0 mm' })).toThrow(/within=0/);
  expect(() => calculate(motionWindowWorking, { ...given, within: '9 mm' })).toThrow(/below 9/);
  expect(() => calculate(motionWindowWorking, { ...given, trip: '9.2 mm pp' })).toThrow(/trip above the alert/);
  // 4.7 mm peak is 9.4 mm peak-to-peak: still inside.
  expect(() => calculate(motionWindowWorking, { ...given, trip: '4.7 mm peak' })).toThrow(/trip above the alert/);
  expect(() => calculate(motionWindowWorking, { ...given, frequency: '0 Hz' })).toThrow(/above zero/);
});

test('negative: what is not stated leaves what needs it unknown, by name', () => {
  const of = stated({ is: 'line' as const, harmonic: 1, line: 'exciter/stroke', state: 'highest' });
  const statement = { of, wanted: stated(stroke(9)), within: stated(si('displacement', 0.0005)), trip: notStated };
  expect(windowSetPoints(statement, () => answer(15), 'SC-7/corner').window).toEqual({
    known: false,
    missing: [{ of: 'SC-7/corner', what: 'trip' }],
  });
  const known = windowSetPoints(
    { ...statement, trip: stated(stroke(10.5)) },
    () => unanswered([{ of: 'SC-7', what: 'speed' }]),
    'x',
  );
  expect(known.window.known).toBe(true);
  expect(known.accelerations).toMatchObject({ known: false, missing: [{ what: 'speed' }] });
});
