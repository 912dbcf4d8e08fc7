import { expect, test } from 'vitest';
import { decibelField } from './decibel-field.ts';
import { choiceField, countField, fileField, flagField, textField } from './field.ts';
import { pointDecimals } from './number.ts';
import { motions, type QuantityName, quantities } from './quantities.ts';
import { curveField, levelField, numberField, quantityField, spanField, toleranceField } from './quantity-field.ts';
import { Refusal } from './refusal.ts';

test('law: the example of every field is read by the field itself', () => {
  const names = Object.keys(quantities) as QuantityName[];
  const fields = [
    ...names.map((name) => quantityField(name, name)),
    ...names.filter((name) => quantities[name].metric[0] !== '1').map((name) => spanField(name, name)),
    levelField(motions, 'level'),
    toleranceField('tolerance'),
    decibelField('loss'),
    countField('count'),
    choiceField(['one', 'two'], 'choice'),
    flagField('flag'),
    textField('text'),
    numberField('number', { example: '1.2' }),
  ];
  for (const field of fields) {
    const value = field.read(field.example, pointDecimals);
    expect(field.show(value as never), field.meaning).not.toBe('');
    expect(JSON.stringify(field.json(value as never))).not.toMatch(/null|NaN/);
    expect(field.schema.description ?? field.schema.enum).toBeDefined();
  }
});

test('law: scripts get the SI value, its unit and the text', () => {
  expect(quantityField('voltage', 'v').json(0.5 as never)).toEqual({ value: 0.5, unit: 'V', shown: '500 mV' });
  const level = levelField(motions, 'level');
  expect(level.json(level.read('4.5 mm/s rms 10-1000 Hz', pointDecimals))).toEqual({
    value: expect.closeTo(0.0045, 12),
    unit: 'm/s',
    detector: 'rms',
    band: { low: 10, high: 1000, unit: 'Hz' },
    shown: '4.5 mm/s rms 10..1000 Hz',
  });
  const span = spanField('voltage', 'span');
  expect(span.json(span.read('10-14 V', pointDecimals))).toEqual({ low: 10, high: 14, unit: 'V', shown: '10..14 V' });
  expect(decibelField('loss').json(1.4236)).toEqual({ value: 1.4236, unit: 'dB', shown: '1.424 dB' });
  expect(countField('count').json(9)).toEqual({ value: 9, unit: '1', shown: '9' });
});

test('law: a curve is sorted by frequency and its points are above zero', () => {
  const noise = curveField('acceleration density', 'noise');
  const read = noise.read({ '1 kHz': '3 ug/rtHz', '10 Hz': '8 µg/√Hz' }, pointDecimals);
  expect(read.frequencies).toEqual([10, 1000]);
  expect(noise.show(read)).toBe('10 Hz: 8 µg/√Hz, 1000 Hz: 3 µg/√Hz');
  for (const raw of [
    { '10 Hz': 5 },
    { '10 V': '5 ug/rtHz' },
    { '0 Hz': '5 ug/rtHz' },
    '10 Hz: 5',
    { '10 Hz': '5 ug' },
  ]) {
    expect(() => noise.read(raw, pointDecimals), JSON.stringify(raw)).toThrow(Refusal);
  }
});

test('law: only a ratio and a count may be plain numbers in a file', () => {
  expect(quantityField('ratio', 'r').read(1.5, pointDecimals)).toBe(1.5);
  expect(numberField('n').read(1e-7, pointDecimals)).toBe(1e-7);
  expect(numberField('n').show(1.25, { decimal: 'comma' })).toBe('1,25');
  expect(() => quantityField('frequency', 'f').read(50, pointDecimals)).toThrow(/without a unit/);
  expect(() => levelField(motions, 'l').read(4.5, pointDecimals)).toThrow(/without a unit/);
  expect(() => decibelField('loss').read(3, pointDecimals)).toThrow(/without a unit/);
});

test('law: a choice is one of its words, a flag yes or no, and a near miss is suggested', () => {
  const choice = choiceField(['periodic', 'symmetric'], 'definition');
  expect(choice.read('periodic', pointDecimals)).toBe('periodic');
  expect(() => choice.read('Periodic', pointDecimals)).toThrow("Did you mean 'periodic'?");
  expect(() => choice.read('', pointDecimals)).toThrow(/one of: periodic, symmetric/);
  expect(flagField('f').read('yes', pointDecimals)).toBe(true);
  expect(flagField('f').read(false, pointDecimals)).toBe(false);
  for (const raw of ['true', 'Yes', 1, 0, '', null]) {
    expect(() => flagField('f').read(raw, pointDecimals), String(raw)).toThrow(Refusal);
  }
});

test('law: a file field hands its content on', () => {
  const field = fileField(
    'budget',
    (content) => String(content).length,
    (value) => `${value} characters`,
  );
  expect(field.show(field.read('four', pointDecimals))).toBe('4 characters');
});
