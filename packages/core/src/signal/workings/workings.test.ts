import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../../quantity/index.ts';
import { calculate } from '../../working/index.ts';
import { windowNames } from '../windows/kinds.ts';
import { spectrumSettings } from './spectrum-settings.ts';
import { windowProperties } from './window-properties.ts';

function outputs(definition: Parameters<typeof calculate>[0], given: Readonly<Record<string, string>>) {
  return Object.fromEntries(
    calculate(definition, given).results.map((each) => [each.name, (each.json as { value: number }).value]),
  );
}

test('law: T·df = 1, lines·df = F_max, f_s = N·df, f_s = 2.56·F_max', () => {
  const highest = fc.double({ min: 0.5, max: 40_000, noNaN: true });
  const lines = fc.integer({ min: 1, max: 512 }).map((each) => 25 * each);
  fc.assert(
    fc.property(highest, lines, (f, l) => {
      const found = outputs(spectrumSettings, { 'highest-frequency': `${f} Hz`, lines: String(l) });
      expect(found['record-length']! * found.resolution!).toBeCloseTo(1, 12);
      expect((l * found.resolution!) / f).toBeCloseTo(1, 12);
      expect(found['sampling-rate']! / (found.samples! * found.resolution!)).toBeCloseTo(1, 12);
      expect(found['sampling-rate']! / f).toBeCloseTo(2.56, 12);
      expect(Number.isInteger(found.samples)).toBe(true);
    }),
  );
});

test('law: every window gives its properties in every definition, and hertz only where the rate is known', () => {
  for (const window of windowNames) {
    const given = { window, length: '1024', definition: 'periodic' };
    const bare = calculate(windowProperties, given).results.map((each) => each.name);
    expect(bare).toEqual(['coherent-gain', 'enbw-bins', 'scalloping']);
    const found = outputs(windowProperties, { ...given, 'sampling-rate': '2560 Hz' });
    expect(found.enbw).toBeCloseTo(found['enbw-bins']! * 2.5, 10);
  }
});

test('law: scalloping is told as a number of decibels with its unit', () => {
  const results = calculate(windowProperties, { window: 'hann', length: '4096', definition: 'periodic' }).results;
  const scalloping = results.find((each) => each.name === 'scalloping')!;
  expect(scalloping.json).toEqual({ value: expect.closeTo(1.4236, 4), unit: 'dB', shown: '1.424 dB' });
});

test('negative: unreadable settings are refused with what was expected', () => {
  const settings = (given: Readonly<Record<string, string>>) => () => calculate(spectrumSettings, given);
  expect(settings({ 'highest-frequency': '1 kHz', lines: '512' })).toThrow(/25 divides/);
  expect(settings({ 'highest-frequency': '0 Hz', lines: '400' })).toThrow(/above zero/);
  expect(settings({ 'highest-frequency': '1000', lines: '400' })).toThrow(/no unit/);
  expect(settings({ 'highest-frequency': '1 kHz', lines: '-400' })).toThrow(Refusal);
  expect(settings({ 'highest-frequency': '1 kHz', lines: '999999975' })).toThrow(Refusal);
  const properties = (given: Readonly<Record<string, string>>) => () => calculate(windowProperties, given);
  expect(properties({ window: 'haning', length: '64', definition: 'periodic' })).toThrow(/Did you mean 'hann'/);
  expect(properties({ window: 'hann', length: '999999999', definition: 'periodic' })).toThrow(/at most/);
  expect(properties({ window: 'hann', length: '2', definition: 'symmetric' })).toThrow(Refusal);
  expect(properties({ window: 'hann', length: '64' })).toThrow(/definition/);
});
