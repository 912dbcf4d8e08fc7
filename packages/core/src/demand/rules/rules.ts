import type { Finding } from '../../finding/finding.ts';
import { boundariesAlike } from './boundaries-alike.ts';
import { boundariesRise } from './boundaries-rise.ts';
import { boundariesUsual } from './boundaries-usual.ts';
import { burstBand } from './burst-band.ts';
import { levelsInOrder } from './levels-in-order.ts';
import { lineSpacing } from './line-spacing.ts';
import { oneDetector } from './one-detector.ts';
import { oneUnit } from './one-unit.ts';
import type { DemandRule, StatedLimits, StatedPoint } from './rule.ts';
import { viewDirection } from './view-direction.ts';

/** Rules that look at a point as it is stated. */
export const pointRules: readonly DemandRule<StatedPoint>[] = [
  levelsInOrder,
  oneDetector,
  oneUnit,
  lineSpacing,
  burstBand,
  viewDirection,
];

/** Rules that look at the limits an owner gives. */
export const limitRules: readonly DemandRule<StatedLimits>[] = [boundariesRise, boundariesAlike, boundariesUsual];

/** Every rule of the room, whatever it looks at: for help, pages and completeness. */
// biome-ignore lint/suspicious/noExplicitAny: rules of unlike subjects have no other common type
export const demandRules: readonly DemandRule<any>[] = [...pointRules, ...limitRules];

/** What is doubtful about a point as stated. */
export function pointDoubts(stated: StatedPoint): readonly Finding[] {
  return pointRules.flatMap((rule) => rule.check(stated));
}

/** What is doubtful about limits as stated. */
export function limitDoubts(stated: StatedLimits): readonly Finding[] {
  return limitRules.flatMap((rule) => rule.check(stated));
}
