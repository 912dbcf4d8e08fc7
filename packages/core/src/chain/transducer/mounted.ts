import {
  type Answer,
  answerOf,
  ask,
  type Curve,
  type Field,
  fromAll,
  type Optional,
  type Quantity,
  type Sheet,
  type Stated,
} from '../../quantity/index.ts';
import { mountedResonance } from '../formulas/mounted-resonance.ts';
import { densityAt } from '../formulas/noise.ts';
import type { MountModel } from '../mount/mount-kind.ts';

/**
 * The resonance of a transducer on this mount: the data-sheet value on a rigid mount, lowered by the softest stiffness
 * of the mount under the moved mass (Dunkerley, so never too high).
 */
export function movedResonance<Name extends string>(
  sheet: Sheet,
  resonanceField: Name,
  mass: Stated<Quantity<'mass'>> | undefined,
  mount: MountModel,
): Answer<number> {
  const onStud = ask(sheet, [resonanceField], (values) => values[resonanceField] as unknown as number);
  if (mount.stiffness === undefined) return onStud;
  return fromAll(
    { onStud, stiffness: mount.stiffness, added: mount.addedMass, own: answerOf(mass, sheet.of, 'mass') },
    ({ onStud: f, stiffness, added, own }) => mountedResonance(f, stiffness.low, own + added),
  );
}

/** The stated settling time, where the data sheet gives one. */
export function settlingOf(
  sheet: Sheet<{ readonly settling: Optional<Quantity<'time'>> }>,
): Answer<number> | undefined {
  if (sheet.values.settling === undefined) return undefined;
  return ask(sheet, ['settling'], ({ settling }) => settling as number);
}

/** The stated noise at the output: density over the sensitivity, times the sensitivity. */
export function statedNoise(
  sheet: Sheet<{ readonly noise: Field<Curve> }>,
  sensitivity: number,
): Answer<(frequency: number) => number> {
  return ask(
    sheet,
    ['noise'],
    ({ noise }) =>
      (frequency: number) =>
        densityAt(noise, frequency) * sensitivity,
  );
}
