import type { ChainParts } from '../chain/chain.ts';
import type { Mount } from '../chain/mount/kinds.ts';
import { outcomes } from '../chain/rules/rule.ts';
import type { Transducer } from '../chain/transducer/kinds.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Policy } from '../demand/policy.ts';
import { type Sheet, type Stated, valueIfStated } from '../quantity/index.ts';
import { type Appraisal, appraisal, failures, leastMargin } from './appraisal.ts';

/** What stays the same for every candidate at a point: the way from the transducer to the input. */
export type Rest = Omit<ChainParts, 'transducer' | 'mount'>;

export interface ShortlistRow {
  readonly transducer: Transducer;
  readonly mount: Mount;
  readonly appraisal: Appraisal;
  readonly leastMargin: number;
  readonly failures: number;
  readonly costRank: number | undefined;
}

/**
 * Every transducer on every mount against every target, best first. The order has no weights: outcome first; of those
 * that fail, fewest failures; then the larger least margin; then the cheaper; then the name.
 */
export function shortlist(
  point: MeasuringPoint,
  transducers: readonly Transducer[],
  mounts: readonly Mount[],
  rest: Rest,
  policy: Policy,
): readonly ShortlistRow[] {
  const rows = transducers.flatMap((transducer) =>
    mounts.map((mount): ShortlistRow => {
      const appraised = appraisal(point, { ...rest, transducer, mount }, policy);
      return {
        transducer,
        mount,
        appraisal: appraised,
        leastMargin: leastMargin(appraised),
        failures: failures(appraised).length,
        costRank: valueIfStated((transducer.sheet as Sheet).values.costRank as Stated<number> | undefined),
      };
    }),
  );
  return rows.sort(inRankOrder);
}

const unknownCost = Number.MAX_SAFE_INTEGER;

function inRankOrder(a: ShortlistRow, b: ShortlistRow): number {
  const outcome = outcomes.indexOf(b.appraisal.outcome) - outcomes.indexOf(a.appraisal.outcome);
  if (outcome !== 0) return outcome;
  if (a.failures !== b.failures) return a.failures - b.failures;
  if (a.leastMargin !== b.leastMargin) return b.leastMargin - a.leastMargin;
  const cost = (a.costRank ?? unknownCost) - (b.costRank ?? unknownCost);
  return cost !== 0 ? cost : a.appraisal.prediction.chain.of < b.appraisal.prediction.chain.of ? -1 : 1;
}
