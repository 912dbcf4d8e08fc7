import { Broken, nearest, Refusal } from '../quantity/index.ts';
import type { Contribution } from './contribution.ts';
import type { Expression, ModelTerm } from './expression.ts';
import { type Arithmetic, numberArithmetic } from './operations.ts';
import { type Uncertain, uncertain, uncertainArithmetic } from './uncertain.ts';

/** A model as trials run it: the values of the inputs in their order give the value of the result. */
export type NumericModel = (values: ArrayLike<number>) => number;

/** The model of an expression, with its names bound to places in the list. Same formula as `propagated`. */
export function modelOf(expression: Expression, names: readonly string[]): NumericModel {
  return compiled(expression.term, placesOf(expression, names), numberArithmetic);
}

/**
 * The result of a model with its slope to every input, by the chain rule through each operation (forward-mode
 * automatic differentiation): the law of propagation of uncertainty. Source: JCGM 100, 5.1.2 and 5.1.3.
 * Throws Refusal where the model has no finite value or no slope at the estimates.
 */
export function propagated(expression: Expression, inputs: readonly Contribution[]): Uncertain {
  const places = placesOf(
    expression,
    inputs.map((each) => each.name),
  );
  return compiled(expression.term, places, uncertainArithmetic)(inputs.map(uncertain));
}

function placesOf(expression: Expression, names: readonly string[]): ReadonlyMap<string, number> {
  for (const [name, column] of expression.names) {
    if (names.includes(name)) continue;
    const near = nearest(name, names);
    throw new Refusal({
      read: `${name} at column ${column} of '${expression.text}'`,
      expected: `one of the inputs: ${names.join(', ')}`,
      ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
    });
  }
  return new Map(names.map((name, place) => [name, place]));
}

function compiled<T>(
  term: ModelTerm,
  places: ReadonlyMap<string, number>,
  arithmetic: Arithmetic<T>,
): (values: ArrayLike<T>) => T {
  if (term.is === 'number') {
    const constant = arithmetic.constant(term.value);
    return () => constant;
  }
  if (term.is === 'name') {
    const place = places.get(term.name);
    if (place === undefined) throw new Broken('every name of a model is bound before it is computed', { ...term });
    return (values) => values[place]!;
  }
  if (term.is === 'unary') {
    const { operation } = term;
    const of = compiled(term.of, places, arithmetic);
    return (values) => arithmetic.unary(operation, of(values));
  }
  const { operation } = term;
  const left = compiled(term.left, places, arithmetic);
  const right = compiled(term.right, places, arithmetic);
  return (values) => arithmetic.binary(operation, left(values), right(values));
}
