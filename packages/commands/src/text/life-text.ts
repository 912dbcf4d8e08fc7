import { type PointLife, showLife } from '@soundpost/core';
import { type Line, labelled } from '../layout/line.ts';
import type { Manner } from '../manner.ts';
import { missingText } from './values-text.ts';

/** What surroundings do to the life of the chosen chain: a range with how it is known, never one number. */
export function lifeLines(all: readonly PointLife[], { width }: Manner): readonly Line[] {
  return all.flatMap(({ effect, missing }) => {
    const cannotTell = missing.length === 0 ? '' : `cannot be told (${missingText(missing)}). If so: `;
    const { part, cause, shows } = effect;
    return labelled('Life', `${cannotTell}${part}, ${showLife(effect)}: ${cause}; it shows as: ${shows}`, width);
  });
}
