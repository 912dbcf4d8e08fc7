import { type Answer, ask, type Field, type Fields, fraction, fromAll, type Sheet } from '../quantity/index.ts';
import { type Clause, clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { type ElementLine, type ElementPlace, linesFrom } from './element.ts';
import { counted, turning } from './form.ts';
import { toothPair } from './mesh-frequencies.ts';
import { equation, type SpeedRelation } from './relation.ts';

/** Two toothed wheels and an endless loop of teeth or links between them. */
export interface Loop {
  readonly driving: number;
  readonly driven: number;
  readonly loop: number;
}

export interface LoopFields extends Fields {
  readonly drivingTeeth: Field<number>;
  readonly drivenTeeth: Field<number>;
}

/** Mesh z_1, one turn of the loop z_1/z_L, the same tooth in the same link gcd(z_1, z_L)/z_L of the driving speed, exact. */
export function loopOrders({ driving, loop }: Pick<Loop, 'driving' | 'loop'>) {
  return {
    mesh: fraction(driving),
    loopPass: fraction(driving, loop),
    hunting: fraction(1, toothPair(driving, loop).turnsToMeet),
  };
}

/** The fewest teeth of a loop whose wheels nearly touch: (z_1 + z_2)·(1/2 + 1/π). */
export function shortestLoop(driving: number, driven: number): number {
  return (driving + driven) * (1 / 2 + 1 / Math.PI);
}

/** The words of one kind of loop. */
export interface LoopWords {
  /** `chain`, `belt`. */
  readonly loop: string;
  /** Of the driving wheel: `sprocket`. */
  readonly wheel: string;
  /** What the mesh shows. */
  readonly mesh: string;
}

type Wheels = Sheet<LoopFields>;

function wheelsOf(sheet: Wheels): Answer<Omit<Loop, 'loop'>> {
  return ask(sheet, ['drivingTeeth', 'drivenTeeth'], ({ drivingTeeth: driving, drivenTeeth: driven }) => ({
    driving,
    driven,
  }));
}

/** Both wheels turn the same way, without slip. */
export function loopRelations(sheet: Wheels, { loop }: LoopWords): Answer<readonly SpeedRelation<'from' | 'to'>[]> {
  return fromAll({ wheels: wheelsOf(sheet) }, ({ wheels: { driving, driven } }) => [
    { words: `a ${loop} joins ${driving} and ${driven} teeth`, terms: equation(['from', driving], ['to', -driven]) },
  ]);
}

export const loopSources: readonly Clause[] = [
  clause(tradePractice, 'tooth mesh of chains and timing belts: teeth times speed'),
];
const line = linesFrom(loopSources);

/** Lines of a loop; `length` is its count of teeth or links. */
export function loopLines(
  sheet: Wheels,
  length: Answer<number>,
  place: ElementPlace<'from' | 'to'>,
  { loop, wheel, mesh }: LoopWords,
): readonly ElementLine[] {
  const from = turning(place.shafts.from);
  const known = fromAll({ wheels: wheelsOf(sheet), length }, ({ wheels, length: count }) =>
    loopOrders({ ...wheels, loop: count }),
  );
  return [
    line(
      'mesh',
      mesh,
      3,
      fromAll({ wheels: wheelsOf(sheet) }, ({ wheels }) => [counted(wheels.driving, from)]),
    ),
    line(
      `${loop}-pass`,
      `One turn of the ${loop}: a bad place in it`,
      4,
      fromAll({ known }, ({ known: orders }) => [counted(orders.loopPass, from)]),
    ),
    line(
      'hunting-tooth',
      `The same tooth of the driving ${wheel} meets the same place of the ${loop} again`,
      1,
      fromAll({ known }, ({ known: orders }) => [counted(orders.hunting, from)]),
    ),
  ];
}
