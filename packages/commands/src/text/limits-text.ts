import { type MachineLimits, showLevel, showQuantity } from '@soundpost/core';
import { blank, type Line, paragraph } from '../layout/line.ts';
import type { Manner } from '../manner.ts';
import { statedText } from './sheet-text.ts';
import { missingText } from './values-text.ts';

/** The limits a machine is held against, and whose they are. */
export function limitsLines(limits: MachineLimits | undefined, { showing, width }: Manner): readonly Line[] {
  if (limits === undefined) return [];
  if (!limits.boundaries.known) {
    return [
      blank,
      ...paragraph(`  Limits of ${limits.title}: ${missingText(limits.boundaries.missing)}.`, width, '  '),
    ];
  }
  const { ab, bc, cd } = limits.boundaries.value;
  const text = `A/B ${showLevel(ab, showing)}, B/C ${showLevel(bc, showing)}, C/D ${showLevel(cd, showing)}`;
  const clearance =
    limits.clearance === undefined
      ? ''
      : `; diametral clearance ${statedText(limits.clearance, (value) => showQuantity('length', value, showing))}`;
  return [blank, ...paragraph(`  Limits of ${limits.title}: ${text}${clearance}.`, width, '  ')];
}
