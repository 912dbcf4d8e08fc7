import { expect, test } from 'vitest';
import { ledBack } from './led-back.ts';

const moving = (...keys: readonly string[]) => ({ moves: new Set(keys) });

test('law: what a change moves alone is led back to it, and to every other that moves it too', () => {
  const causes = ledBack(['alarm', 'proof'], [moving('alarm'), moving('alarm', 'proof'), moving()], []);
  expect(causes.get('alarm')).toEqual({ changes: [0, 1], acting: 'alone' });
  expect(causes.get('proof')).toEqual({ changes: [1], acting: 'alone' });
});

test('law: what no change moves alone is led back to those without which it does not move', () => {
  const causes = ledBack(['alarm'], [moving(), moving()], [moving('alarm'), moving('alarm')]);
  expect(causes.get('alarm')).toEqual({ changes: [0, 1], acting: 'together' });
});

test('negative: what neither tells is not laid at the door of any change', () => {
  expect(ledBack(['alarm'], [moving()], [moving()]).get('alarm')).toEqual({ changes: [], acting: 'not told apart' });
});
