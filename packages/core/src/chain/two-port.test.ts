import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Complex, complex, difference, magnitude, product, quotient, scaled, sum } from '../signal/complex.ts';
import {
  cascade,
  firstColumn,
  isolatedGain,
  lumpedLine,
  openTransfer,
  outputImpedance,
  seriesImpedance,
  shuntAdmittance,
  straightThrough,
  type TwoPort,
  transferFromJoint,
  upperRow,
} from './two-port.ts';

const entries = ['a', 'b', 'c', 'd'] as const;

/** Largest distance between the entries of two two-ports, each over the size the entry has. */
function apart(one: TwoPort, other: TwoPort): number {
  return Math.max(
    ...entries.map((each) => magnitude(difference(one[each], other[each])) / (1e-30 + magnitude(other[each]))),
  );
}

function determinant(port: TwoPort): Complex {
  return difference(product(port.a, port.d), product(port.b, port.c));
}

/** Of a two-port that is not singular. */
function inverse(port: TwoPort): TwoPort {
  const over = (entry: Complex, sign: 1 | -1) => quotient(scaled(entry, sign), determinant(port));
  return { a: over(port.d, 1), b: over(port.b, -1), c: over(port.c, -1), d: over(port.a, 1) };
}

const decades = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true }).map((x) => 10 ** x);
const frequency = decades(-1, 5);
const resistance = decades(-1, 6);
const line = fc.record({ ohms: decades(-3, 3), henries: decades(-8, -3), farads: decades(-12, -7), frequency });
const asPort = ({
  ohms,
  henries,
  farads,
  frequency: f,
}: {
  ohms: number;
  henries: number;
  farads: number;
  frequency: number;
}) => lumpedLine(ohms, henries, farads, 2 * Math.PI * f);

/** Passive elements of one chain at one frequency. */
const passive = fc.oneof(
  line.map(asPort),
  resistance.map((ohms) => seriesImpedance(complex(ohms, 0))),
  fc.tuple(decades(-8, -3), frequency).map(([henries, f]) => seriesImpedance(complex(0, 2 * Math.PI * f * henries))),
  fc.tuple(decades(-12, -7), frequency).map(([farads, f]) => shuntAdmittance(complex(0, 2 * Math.PI * f * farads))),
  resistance.map((ohms) => shuntAdmittance(complex(1 / ohms, 0))),
);

const gain = fc
  .tuple(decades(-3, 3), fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }))
  .map(([size, angle]) => isolatedGain(complex(size * Math.cos(angle), size * Math.sin(angle))));
const any = fc.oneof(passive, gain);

test('law: cascading is associative, so a chain may be taken together in any order', () => {
  fc.assert(
    fc.property(any, any, any, (one, two, three) => {
      const [left, right] = [cascade(cascade(one, two), three), cascade(one, cascade(two, three))];
      const size = Math.max(...entries.map((each) => magnitude(left[each])));
      for (const each of entries) {
        expect(magnitude(difference(left[each], right[each]))).toBeLessThanOrEqual(1e-12 * size);
      }
    }),
  );
});

test('law: nothing in the line changes nothing: straight through, no admittance across, no impedance along', () => {
  fc.assert(
    fc.property(any, (port) => {
      const nothing = [
        straightThrough,
        shuntAdmittance(complex(0, 0)),
        seriesImpedance(complex(0, 0)),
        lumpedLine(0, 0, 0, 1),
      ];
      for (const each of nothing) {
        expect(apart(cascade(port, each), port)).toBe(0);
        expect(apart(cascade(each, port), port)).toBe(0);
      }
    }),
  );
});

test('law: a length of cable is symmetric (a = d) and reciprocal (determinant 1), as every passive row is', () => {
  fc.assert(
    fc.property(line, fc.array(passive, { minLength: 1, maxLength: 6 }), (each, row) => {
      const cable = asPort(each);
      expect(magnitude(difference(cable.a, cable.d))).toBeLessThanOrEqual(1e-12 * magnitude(cable.a));
      const whole = row.reduce(cascade, cable);
      // The 1 is the difference of two products that may be large: its digits are theirs.
      const digits = 1 + magnitude(product(whole.a, whole.d));
      expect(magnitude(difference(determinant(whole), complex(1, 0)))).toBeLessThanOrEqual(1e-12 * digits);
    }),
  );
});

test('law: two lengths of cable in a row have the capacitance, resistance and inductance of both', () => {
  fc.assert(
    fc.property(line, ({ ohms, henries, farads }) => {
      // Far below the frequency at which the length matters, where lumping is exact.
      const omega = 1e-4 / Math.sqrt(farads * Math.max(henries, ohms * ohms * farads));
      const piece = lumpedLine(ohms, henries, farads, omega);
      const both = cascade(piece, piece);
      const whole = lumpedLine(2 * ohms, 2 * henries, 2 * farads, omega);
      for (const each of entries) {
        expect(magnitude(difference(both[each], whole[each])) / magnitude(whole[each])).toBeLessThan(1e-4);
      }
    }),
  );
});

test('law: a passive stage is taken off again by the same algebra backwards, at either end', () => {
  fc.assert(
    fc.property(passive, any, (known, rest) => {
      const size = (port: TwoPort) => Math.max(...entries.map((each) => magnitude(port[each])));
      const digits = 1e-12 * size(known) * size(inverse(known)) * size(rest);
      const front = cascade(inverse(known), cascade(known, rest));
      const back = cascade(cascade(rest, known), inverse(known));
      for (const each of entries) {
        expect(magnitude(difference(front[each], rest[each]))).toBeLessThanOrEqual(digits);
        expect(magnitude(difference(back[each], rest[each]))).toBeLessThanOrEqual(digits);
      }
    }),
  );
});

test('law: an isolated stage is neither loaded nor loads: gains multiply, whatever stands after it', () => {
  fc.assert(
    fc.property(gain, gain, passive, (one, two, loaded) => {
      const whole = openTransfer(cascade(cascade(one, loaded), two));
      const product3 = product(product(openTransfer(one), openTransfer(loaded)), openTransfer(two));
      expect(magnitude(difference(whole, product3))).toBeLessThanOrEqual(1e-12 * magnitude(product3));
      expect(magnitude(outputImpedance(one))).toBe(0);
    }),
  );
});

test('law: a source at a joint is divided between what stands before and after: Thevenin by another way', () => {
  fc.assert(
    fc.property(fc.array(passive, { maxLength: 4 }), fc.array(passive, { maxLength: 4 }), (left, right) => {
      const [before, after] = [left.reduce(cascade, straightThrough), right.reduce(cascade, straightThrough)];
      // The same source, drawn as the near end of a row: its source impedance in series, then what follows.
      const whole = cascade(seriesImpedance(outputImpedance(before)), after);
      const [one, other] = [transferFromJoint(before, after), openTransfer(whole)];
      expect(magnitude(difference(one, other))).toBeLessThanOrEqual(1e-9 * magnitude(other));
    }),
  );
});

test('law: a row or column taken alone is that of the whole cascade, to the last digit, as sums of products', () => {
  fc.assert(
    fc.property(any, any, (one, two) => {
      const whole: TwoPort = {
        a: sum(product(one.a, two.a), product(one.b, two.c)),
        b: sum(product(one.a, two.b), product(one.b, two.d)),
        c: sum(product(one.c, two.a), product(one.d, two.c)),
        d: sum(product(one.c, two.b), product(one.d, two.d)),
      };
      expect(cascade(one, two)).toEqual(whole);
      expect(upperRow(one, two)).toEqual({ a: whole.a, b: whole.b });
      expect(firstColumn(one, two)).toEqual({ a: whole.a, c: whole.c });
    }),
  );
});
