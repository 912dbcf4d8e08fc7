import { Refusal } from '../quantity/index.ts';
import type { Contribution } from './contribution.ts';
import { type Arithmetic, difference, negative, power, product, quotient, sum, unaryFunctions } from './operations.ts';

/**
 * An estimate with what it came from: its slope (sensitivity coefficient) to every independent input. Since inputs
 * keep their identity, x − x has no uncertainty and what two results share stays correlated. First order.
 */
export interface Uncertain {
  readonly estimate: number;
  readonly sensitivities: ReadonlyMap<Contribution, number>;
}

/** An input as an uncertain quantity: its estimate, with a slope of 1 to itself. */
export function uncertain(input: Contribution): Uncertain {
  return { estimate: input.estimate, sensitivities: new Map([[input, 1]]) };
}

/** Carries estimates and slopes through a model: forward-mode differentiation. Throws Refusal where there is no slope. */
export const uncertainArithmetic: Arithmetic<Uncertain> = {
  constant: (value) => ({ estimate: value, sensitivities: new Map() }),
  unary(operation, x) {
    const estimate = existing(operation.value(x.estimate), () => called(operation.name, x));
    const slope = sloped(operation.slope(x.estimate), x, () => called(operation.name, x));
    return { estimate, sensitivities: scaled(x, slope) };
  },
  binary(operation, a, b) {
    const written = () => `${a.estimate} ${operation.name} ${b.estimate}`;
    const estimate = existing(operation.value(a.estimate, b.estimate), written);
    const [ofA, ofB] = operation.slopes(a.estimate, b.estimate);
    const sensitivities = scaled(a, sloped(ofA, a, written));
    for (const [input, slope] of scaled(b, sloped(ofB, b, written))) {
      sensitivities.set(input, (sensitivities.get(input) ?? 0) + slope);
    }
    return { estimate, sensitivities };
  },
};

function scaled(x: Uncertain, slope: number): Map<Contribution, number> {
  return new Map([...x.sensitivities].map(([input, sensitivity]) => [input, sensitivity * slope]));
}

function called(name: string, x: Uncertain): string {
  return `${name}(${x.estimate})`;
}

function existing(value: number, written: () => string): number {
  if (Number.isFinite(value)) return value;
  throw new Refusal({ read: written(), expected: 'a model that has a finite value at its estimates' });
}

/** A slope that does not exist does no harm where nothing uncertain stands before it. */
function sloped(slope: number, x: Uncertain, written: () => string): number {
  if (Number.isFinite(slope)) return slope;
  if ([...x.sensitivities.values()].every((each) => each === 0)) return 0;
  throw new Refusal({
    read: written(),
    expected: 'a model with a slope at its estimates',
    suggestion:
      'The law of propagation needs one for each input; write the model without the kink, or move the estimate off it.',
  });
}

const squareRootOperation = unaryFunctions.find((each) => each.name === 'sqrt')!;

/** Arithmetic with uncertain quantities, for models written in code: a + b, with slopes 1 and 1. */
export function uncertainSum(a: Uncertain, b: Uncertain): Uncertain {
  return uncertainArithmetic.binary(sum, a, b);
}

/** a − b, with slopes 1 and −1. */
export function uncertainDifference(a: Uncertain, b: Uncertain): Uncertain {
  return uncertainArithmetic.binary(difference, a, b);
}

/** a · b, with slopes b and a. */
export function uncertainProduct(a: Uncertain, b: Uncertain): Uncertain {
  return uncertainArithmetic.binary(product, a, b);
}

/** a/b, with slopes 1/b and −a/b². */
export function uncertainQuotient(a: Uncertain, b: Uncertain): Uncertain {
  return uncertainArithmetic.binary(quotient, a, b);
}

/** aⁿ, with the slope n · aⁿ⁻¹. */
export function uncertainPower(a: Uncertain, exponent: number): Uncertain {
  return uncertainArithmetic.binary(power, a, exactly(exponent));
}

/** √a, with the slope 1/(2·√a). */
export function uncertainSquareRoot(a: Uncertain): Uncertain {
  return uncertainArithmetic.unary(squareRootOperation, a);
}

/** −a, with the slope −1. */
export function uncertainNegative(a: Uncertain): Uncertain {
  return uncertainArithmetic.unary(negative, a);
}

/** A number without uncertainty. */
export function exactly(value: number): Uncertain {
  return uncertainArithmetic.constant(value);
}
