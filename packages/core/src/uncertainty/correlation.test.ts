import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contribution } from './contribution.ts';
import { choleskyFactor, correlatedGroups, correlationMatrix } from './correlation.ts';
import { simultaneousReadings } from './readings.ts';

const [a, b, c] = ['a', 'b', 'c'].map((name) => contribution({ name, standardUncertainty: 1 })) as [
  ReturnType<typeof contribution>,
  ReturnType<typeof contribution>,
  ReturnType<typeof contribution>,
];

/** JCGM 100:2008, H.2: voltage, current in ampere, phase, read at the same five moments (second-hand). */
const circuit = new Map([
  ['V', [5.007, 4.994, 5.005, 4.99, 4.999]],
  ['I', [0.019663, 0.019639, 0.01964, 0.019685, 0.019678]],
  ['phi', [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]],
]);

test('independent: correlation coefficients of the simultaneous readings of H.2 (numpy, by another hand)', () => {
  const { correlations } = simultaneousReadings(circuit);
  expect(correlations.map((each) => each.coefficient.toFixed(3))).toEqual(['-0.355', '0.858', '-0.645']);
});

test('law: correlations of any readings can hold at once, in whatever unit they are written', () => {
  const list = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 4, maxLength: 4 });
  fc.assert(
    fc.property(
      fc.array(list, { minLength: 2, maxLength: 6 }),
      fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
      (lists, factor) => {
        const named = (by: number) => new Map(lists.map((each, i) => [`x${i}`, each.map((reading) => reading * by)]));
        const { inputs, correlations } = simultaneousReadings(named(1));
        expect(() => correlationMatrix(inputs, correlations)).not.toThrow();
        for (const [i, each] of simultaneousReadings(named(factor)).correlations.entries()) {
          const spread = Math.min(...each.between.map((input) => input.standardUncertainty / (factor * 100)));
          if (spread > 1e-9) expect(each.coefficient).toBeCloseTo(correlations[i]!.coefficient, 5);
        }
      },
    ),
  );
});

test('law: the factor times its transpose is the matrix, full correlation included', () => {
  const coefficient = fc.double({ min: -1, max: 1, noNaN: true });
  fc.assert(
    fc.property(coefficient, coefficient, (r, s) => {
      // a and b correlated by r, b and c by s, a and c by r·s: always possible.
      const matrix = correlationMatrix(
        [a, b, c],
        [
          { between: [a, b], coefficient: r },
          { between: [c, b], coefficient: s },
          { between: [a, c], coefficient: r * s },
        ],
      );
      const factor = choleskyFactor(matrix, [a, b, c]);
      for (const [i, row] of matrix.entries()) {
        for (const [j, wanted] of row.entries()) {
          const product = factor[i]!.reduce((sum, each, k) => sum + each * factor[j]![k]!, 0);
          expect(Math.abs(product - wanted)).toBeLessThan(1e-9);
        }
      }
    }),
  );
});

test('groups: what a correlation ties together, also across a third', () => {
  expect(correlatedGroups([a, b, c], [])).toEqual([[0], [1], [2]]);
  expect(correlatedGroups([a, b, c], [{ between: [c, a], coefficient: 0.1 }])).toEqual([[0, 2], [1]]);
  const chained = [
    { between: [a, b] as const, coefficient: 0.1 },
    { between: [b, c] as const, coefficient: 0.1 },
  ];
  expect(correlatedGroups([a, b, c], chained)).toEqual([[0, 1, 2]]);
});

test('law: what a nearly dependent input leaves behind is not lost', () => {
  const near = 1 - 1e-8;
  const matrix = correlationMatrix([a, b, c], [{ between: [a, b], coefficient: near }]);
  const factor = choleskyFactor(matrix, [a, b, c]);
  const difference = factor[0]!.map((each, k) => each - factor[1]![k]!);
  expect(difference.reduce((sum, each) => sum + each * each, 0) / 2e-8).toBeCloseTo(1, 6);
});

test('refused: out of range, with itself, twice, impossible together', () => {
  const tie = (x: typeof a, y: typeof a, coefficient: number) => ({ between: [x, y] as const, coefficient });
  expect(() => correlationMatrix([a, b], [tie(a, b, 1.2)])).toThrow('from -1 to 1');
  expect(() => correlationMatrix([a, b], [tie(a, b, Number.NaN)])).toThrow('from -1 to 1');
  expect(() => correlationMatrix([a, b], [tie(a, a, 0.5)])).toThrow('two different inputs');
  expect(() => correlationMatrix([a, b], [tie(a, b, 0.5), tie(b, a, 0.5)])).toThrow('each pair of inputs once');
  expect(() => correlationMatrix([a, b, c], [tie(a, b, 0.9), tie(b, c, 0.9), tie(a, c, -0.9)])).toThrow(
    'can hold at once',
  );
  expect(() => correlationMatrix([a, b, c], [tie(a, b, 1), tie(b, c, 1), tie(a, c, 0)])).toThrow('can hold at once');
});

test('refused: readings of unequal number were not taken at the same moments', () => {
  expect(() =>
    simultaneousReadings(
      new Map([
        ['V', [1, 2, 3]],
        ['I', [1, 2]],
      ]),
    ),
  ).toThrow('V 3, I 2');
});
