import {
  type Answer,
  answer,
  divided,
  type Fraction,
  fraction,
  isZero,
  type Missing,
  minus,
  multiplied,
  plus,
  toNumber,
  unanswered,
} from '../quantity/index.ts';
import { eliminate, type LinearEquation } from './elimination.ts';
import { fixed } from './form.ts';
import { kindOf, type MachineElement } from './kinds.ts';
import type { RelationTerm, SpeedRelation } from './relation.ts';
import type { Train } from './train.ts';

/** How many turns a shaft makes per turn of the reference, with its sense; negative is the other way round. */
export interface ShaftRatio {
  readonly ratio: Fraction;
  /** What the true ratio may be over this one: 0.98..1 behind a belt that slips up to 2 %. */
  readonly low: number;
  readonly high: number;
}

/** A relation that the others contradict: the speed it gives a shaft, and the speed the others give. */
export interface Disagreement {
  readonly element: string;
  readonly words: string;
  readonly against: readonly string[];
  readonly shaft: string;
  readonly byThis: Fraction | undefined;
  readonly byOthers: Fraction | undefined;
}

export interface ShaftSpeeds {
  readonly reference: string;
  readonly shafts: Readonly<Record<string, Answer<ShaftRatio>>>;
  readonly disagreements: readonly Disagreement[];
}

interface PlacedRelation {
  readonly element: MachineElement;
  readonly relation: SpeedRelation;
}

/** What is missing of shafts whose paths contradict each other. */
export const disputed = 'ratios that agree';

/** The shaft all speeds are counted in. */
export function referenceShaft(train: Train): string {
  const { operation } = train;
  if (operation.by === 'shaft') return operation.shaft;
  const motor = train.elements.find((element) => element.name === operation.motor)!;
  return (motor.shafts as Readonly<Record<string, string>>)[kindOf(motor).drive!.on]!;
}

/**
 * The exact ratio of every shaft to the reference, from the equations of all elements; what slips leaves a band. A
 * shaft the equations do not reach, or on which they disagree, is unknown and says why.
 */
export function shaftSpeeds(train: Train): ShaftSpeeds {
  const reference = referenceShaft(train);
  const placed = train.elements.flatMap(relationsOf);
  const equations = placed.map(({ element, relation }) => equationOf(element, relation.terms));
  const nominal = eliminate(equations, reference);
  const disagreements = nominal.contradictions.map(({ equation, with: others }) =>
    disagreement(placed, equation, others, nominal.solved),
  );
  const disputing = new Set(nominal.contradictions.flatMap(({ equation, with: others }) => [equation, ...others]));
  const beyondDispute = eliminate(
    equations.filter((_, index) => !disputing.has(index)),
    reference,
  ).solved;
  const bands = looseBands(placed, reference, nominal.solved);
  const shafts = Object.fromEntries(
    train.shafts.map((shaft): [string, Answer<ShaftRatio>] => {
      const ratio = nominal.solved.get(shaft);
      if (ratio === undefined) return [shaft, unanswered(whatIsMissing(train, shaft, nominal.solved))];
      if (!beyondDispute.has(shaft)) {
        const names = [...new Set([...disputing].sort((a, b) => a - b).map((index) => placed[index]!.element.name))];
        return [shaft, unanswered([{ of: `${train.of}/${names.join(' and ')}`, what: disputed }])];
      }
      return [shaft, answer({ ratio, ...(bands.get(shaft) ?? { low: 1, high: 1 }) })];
    }),
  );
  return { reference, shafts, disagreements };
}

function relationsOf(element: MachineElement): readonly PlacedRelation[] {
  const relations = kindOf(element).relations(element.sheet);
  if (!relations.known) return [];
  return relations.value
    .filter(({ terms }) => terms.every(({ role }) => role in element.shafts))
    .map((relation) => ({ element, relation }));
}

function equationOf(element: MachineElement, terms: readonly RelationTerm[]): LinearEquation {
  const equation = new Map<string, Fraction>();
  for (const { role, times } of terms) {
    const shaft = (element.shafts as Readonly<Record<string, string>>)[role]!;
    if (shaft === fixed) continue;
    const total = plus(equation.get(shaft) ?? fraction(0), times);
    if (isZero(total)) equation.delete(shaft);
    else equation.set(shaft, total);
  }
  return equation;
}

function movingShafts(element: MachineElement): readonly string[] {
  return Object.values<string>(element.shafts).filter((shaft) => shaft !== fixed);
}

/** Both ends of every loose relation, one at a time; along a row of shafts the shares multiply. */
function looseBands(
  placed: readonly PlacedRelation[],
  reference: string,
  solved: ReadonlyMap<string, Fraction>,
): ReadonlyMap<string, { readonly low: number; readonly high: number }> {
  const bands = new Map<string, { low: number; high: number }>();
  for (const [loose, { relation }] of placed.entries()) {
    if (relation.loosely === undefined) continue;
    const ends = [relation.loosely.low, relation.loosely.high].map((terms) =>
      eliminate(
        placed.map((each, index) => equationOf(each.element, index === loose ? terms : each.relation.terms)),
        reference,
      ),
    );
    for (const [shaft, ratio] of solved) {
      if (isZero(ratio)) continue;
      const shares = ends.flatMap((end) => {
        const other = end.solved.get(shaft);
        return other === undefined ? [] : [toNumber(divided(other, ratio))];
      });
      const band = bands.get(shaft) ?? { low: 1, high: 1 };
      bands.set(shaft, { low: band.low * Math.min(1, ...shares), high: band.high * Math.max(1, ...shares) });
    }
  }
  return bands;
}

function disagreement(
  placed: readonly PlacedRelation[],
  equation: number,
  others: readonly number[],
  solved: ReadonlyMap<string, Fraction>,
): Disagreement {
  const { element, relation } = placed[equation]!;
  const terms = [...equationOf(element, relation.terms)];
  const [shaft, factor] = terms.at(-1) ?? ['', fraction(1)];
  const values = terms.map(([name]) => solved.get(name));
  const against = [
    ...new Set(others.filter((index) => index !== equation).map((index) => placed[index]!.element.name)),
  ];
  const words = { element: element.name, words: relation.words, against, shaft };
  const byOthers = solved.get(shaft);
  if (byOthers === undefined || values.some((value) => value === undefined)) {
    return { ...words, byThis: undefined, byOthers: undefined };
  }
  const residue = terms.reduce((sum, [, times], index) => plus(sum, multiplied(times, values[index]!)), fraction(0));
  return { ...words, byThis: minus(byOthers, divided(residue, factor)), byOthers };
}

/** Walks from a shaft over the elements that touch it until shafts with a speed are met; what those lack is the cause. */
function whatIsMissing(train: Train, shaft: string, solved: ReadonlyMap<string, Fraction>): readonly Missing[] {
  const seen = new Set([shaft]);
  const missing = new Map<string, Missing>();
  for (const near of seen) {
    for (const element of train.elements) {
      const shafts = movingShafts(element);
      if (!shafts.includes(near)) continue;
      const relations = kindOf(element).relations(element.sheet);
      if (!relations.known) for (const each of relations.missing) missing.set(`${each.of}/${each.what}`, each);
      if (relations.known && relations.value.length === 0) continue;
      for (const other of shafts) if (!solved.has(other)) seen.add(other);
    }
  }
  return missing.size > 0 ? [...missing.values()] : [{ of: train.of, what: `what drives shaft '${shaft}'` }];
}
