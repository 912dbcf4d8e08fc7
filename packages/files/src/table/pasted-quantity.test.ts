import { notBelowZeroField, quantityField } from '@soundpost/core';
import { describe, expect, test } from 'vitest';
import { pastedQuantity, readsTwoWays } from './pasted-quantity.ts';

const length = notBelowZeroField(quantityField('length', 'Length as walked', { example: '85 m' }));
const read = (cell: string, unit?: string, decimal?: 'point' | 'comma', file: 'point' | 'comma' = 'point') =>
  pastedQuantity(cell, unit, length, decimal, file);

describe('law: silence is not zero', () => {
  test('an empty cell says nothing', () => expect(read('', 'm')).toEqual({ says: 'nothing' }));

  test('a stroke is no minus, and a word for nothing is no number', () => {
    for (const cell of ['-', '–', '—', '−', 'n/a', 'N/A', 'NA', 'n.a.', 'nil', 'none', 'TBD', '?', '--', '.', '#N/A']) {
      const said = read(cell, 'm');
      expect(said, cell).toMatchObject({ says: 'refused' });
    }
    expect(read('-', 'm')).toMatchObject({ words: expect.stringContaining('not read as zero') });
    expect(read('#REF!', 'm')).toMatchObject({ words: expect.stringContaining('error of the spreadsheet') });
    expect(read('85\u202e m')).toMatchObject({ words: expect.stringContaining('invisible') });
    expect(read('=A1*2', 'm')).toMatchObject({ words: expect.stringContaining('formula') });
  });

  test('unknown is an answer', () => expect(read('Unknown', 'm')).toEqual({ says: 'unknown' }));

  test('a length below zero is refused', () => expect(read('-5', 'm')).toMatchObject({ says: 'refused' }));
});

describe('law: no unit is assumed', () => {
  test('the unit stands in the head or in the cell', () => {
    expect(read('85', 'm')).toEqual({ says: 'value', text: '85 m' });
    expect(read('85 m')).toEqual({ says: 'value', text: '85 m' });
    expect(read('279 ft')).toEqual({ says: 'value', text: '279 ft' });
    expect(read('85 m', 'm')).toEqual({ says: 'value', text: '85 m' });
  });

  test('a bare number, two units and a unit of another quantity are refused', () => {
    expect(read('85')).toMatchObject({ words: expect.stringContaining('has no unit') });
    expect(read('85 ft', 'm')).toMatchObject({ words: expect.stringContaining("'ft' and the head of its column 'm'") });
    expect(read('85', 'kg')).toMatchObject({ says: 'refused' });
    expect(read('about 85 m')).toMatchObject({ says: 'refused' });
  });
});

describe('law: a number two countries read differently is asked about', () => {
  test('which numbers they are', () => {
    expect(['2,5', '1.250', '1,250', '1.250,5', '1.250.000'].filter(readsTwoWays)).toHaveLength(5);
    expect(['2.5', '85', '1250', '1.25', '2.5 m'].filter(readsTwoWays)).toEqual([]);
  });

  test('nothing is taken before the answer, and the answer decides', () => {
    expect(read('2,5', 'm')).toMatchObject({ words: expect.stringContaining('Say first') });
    expect(read('2,5', 'm', 'comma')).toEqual({ says: 'value', text: '2.5 m' });
    expect(read('2,5', 'm', 'point')).toMatchObject({
      words: expect.stringContaining('no separator between thousands'),
    });
    expect(read('1.250', 'm', 'comma')).toMatchObject({ says: 'refused' });
    expect(read('1.250', 'm', 'point')).toEqual({ says: 'value', text: '1.250 m' });
  });

  test('the file keeps its own decimal sign', () => {
    expect(read('2.5', 'm', 'point', 'comma')).toEqual({ says: 'value', text: '2,5 m' });
    expect(read('2,5 m', undefined, 'comma', 'comma')).toEqual({ says: 'value', text: '2,5 m' });
  });
});
