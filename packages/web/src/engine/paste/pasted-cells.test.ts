import { pastedCells } from '@soundpost/files';
import { expect, test } from 'vitest';
import { areHeads, columnOf } from './heads.ts';

test.each<[string, string, readonly (readonly string[])[]]>([
  [
    'a copied range',
    'Point\tLength\r\nA\t85 m\r\nB\t\r\n',
    [
      ['Point', 'Length'],
      ['A', '85 m'],
      ['B', ''],
    ],
  ],
  [
    'semicolons beside decimal commas',
    'A;2,5 m\nB;3 m',
    [
      ['A', '2,5 m'],
      ['B', '3 m'],
    ],
  ],
  [
    'commas',
    'A,85 m\nB,3 m\n',
    [
      ['A', '85 m'],
      ['B', '3 m'],
    ],
  ],
  [
    'quotes',
    '"A, drive end",85 m\n"say ""B""",3 m',
    [
      ['A, drive end', '85 m'],
      ['say "B"', '3 m'],
    ],
  ],
  ['a line end within a cell', 'A\t"pump\nhousing"\tx', [['A', 'pump housing', 'x']]],
  [
    'a lone quote is a sign like others',
    'A\t3" pipe\nB\t"open',
    [
      ['A', '3" pipe'],
      ['B', '"open'],
    ],
  ],
  ['spaces a spreadsheet leaves', '\ufeffA\u00a0 \t 85\u202fm ', [['A', '85 m']]],
  [
    'an empty row in the midst',
    'A\tx\n\t\nB\ty\n\t\n\n',
    [
      ['A', 'x'],
      ['', ''],
      ['B', 'y'],
    ],
  ],
  ['nothing', ' \n\t\n', []],
])('law: %s', (_, text, cells) => {
  expect(pastedCells(text)).toEqual(cells);
});

test('law: a head is a name known to the trade, with a unit where it says one', () => {
  for (const head of ['Length [m]', 'cable length (m)', 'Length, m', 'Length / m', 'Cable length in m', 'LENGTH m']) {
    expect(columnOf(head), head).toMatchObject({ field: 'cable-length', unit: 'm' });
  }
  expect(columnOf('Sensor')).toMatchObject({ field: 'transducer', unit: undefined });
  expect(columnOf('Surface temperature [°C]')).toMatchObject({ field: 'surface-temperature', unit: '°C' });
  expect(columnOf('Remarks')).toMatchObject({ field: undefined });
  expect(areHeads(['Point', 'Remarks', 'Inspector'])).toBe(true);
  expect(areHeads(['pump-drive-end', 'stud', '85 m'])).toBe(false);
});
