import {
  type Answer,
  answer,
  answerOf,
  ask,
  exactly,
  type Field,
  type Fields,
  type Fraction,
  fraction,
  fromAll,
  minus,
  multiplied,
  plus,
  type Quantity,
  type Sheet,
  type Span,
  type Stated,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';
import { equation, type SpeedRelation } from './relation.ts';

/** Diameters of two rims that one drives the other with, by a belt or by rolling on it. */
export interface Rims {
  readonly driving: number;
  readonly driven: number;
}

export interface RimFields extends Fields {
  readonly drivingDiameter: Field<Quantity<'length'>>;
  readonly drivenDiameter: Field<Quantity<'length'>>;
}

/** Both diameters, above zero; `rims` names them in the question: `pulley`. */
export function rimsOf(sheet: Sheet<RimFields>, rims: string): Answer<Rims> {
  return thenAnswer(
    ask(sheet, ['drivingDiameter', 'drivenDiameter'], ({ drivingDiameter: driving, drivenDiameter: driven }) => ({
      driving,
      driven,
    })),
    (known) =>
      known.driving > 0 && known.driven > 0
        ? answer(known)
        : unanswered([{ of: sheet.of, what: `${rims} diameters above zero` }]),
  );
}

/** How far a driven rim falls behind, as a share of its speed; the exact ratio stands on `nominal`. */
export interface FallingBehind {
  readonly nominal: Fraction;
  readonly low: number;
  readonly high: number;
}

/** Slip or creep as stated, its middle the nominal one; none between the usual ends where nothing is stated. */
export function fallingBehind(
  stated: Stated<Span<'fraction'>> | undefined,
  of: string,
  what: 'slip' | 'creep',
  usual: { readonly low: number; readonly high: number },
): Answer<FallingBehind> {
  if (stated === undefined) return answer({ nominal: fraction(0), ...usual });
  return thenAnswer(answerOf(stated, of, what), ({ low, high }) => {
    const middle = multiplied(fraction(1, 2), plus(exactly(low), exactly(high)));
    return low > -1 && high < 1
      ? answer({ nominal: middle, low, high })
      : unanswered([{ of, what: `a ${what} below 100 %` }]);
  });
}

/** D_1·n_1·(1 − s) = ±D_2·n_2, exact at the nominal slip, with both of its ends beside it. */
export function rimRelations(
  words: string,
  rims: Answer<Rims>,
  behind: Answer<FallingBehind>,
  turning: 'the same way' | 'opposite ways',
): Answer<readonly SpeedRelation<'from' | 'to'>[]> {
  const sense = fraction(turning === 'the same way' ? -1 : 1);
  return fromAll({ rims, behind }, ({ rims: { driving, driven }, behind: { nominal, low, high } }) => {
    const at = (share: Fraction) =>
      equation(
        ['from', multiplied(exactly(driving), minus(fraction(1), share))],
        ['to', multiplied(sense, exactly(driven))],
      );
    return [{ words, terms: at(nominal), loosely: { low: at(exactly(high)), high: at(exactly(low)) } }];
  });
}
