import type { Boundaries } from '../../demand/zones/zone-table.ts';
import type { Said } from '../../finding/measure.ts';
import type { Answer, Level } from '../../quantity/index.ts';
import type { Clause } from '../../source/source.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import type { EnvelopeLines } from '../envelope-lines.ts';
import type { SeenLine } from '../lines-seen.ts';
import type { RunningRecord } from '../running-record.ts';

/** What a family of faults is looked for in. */
export interface FamilyEvidence extends CheckedRecord {
  readonly running: RunningRecord;
  /** Envelope of the most impulsive band; worked out once, when it is first asked for. */
  envelope(highest: number): Answer<EnvelopeLines>;
  /** Level of a line as the limits of the point count it; unknown where there are none, or they count otherwise. */
  level(line: SeenLine): Answer<Level>;
  readonly boundaries: Answer<Boundaries>;
}

/** A family that several harmonics and the physics agree on. */
export interface FamilyNamed {
  readonly cause: Said;
  /** What in the record speaks for it. */
  readonly evidence: readonly Said[];
  readonly rivals: readonly { readonly cause: Said; readonly next: Said }[];
  readonly next: Said;
}

/** What stands there and is not enough to name it, with what would be. */
export interface FamilyOpen {
  readonly because: Said;
  readonly needs: Said;
}

export type FamilyJudged = { readonly named: FamilyNamed } | { readonly open: FamilyOpen };

/** A family of machine faults: one file, one line in `kinds.ts`. Gives nothing where it does not show. */
export interface FamilyKind<Kind extends string = string> {
  readonly kind: Kind;
  readonly name: string;
  readonly sources: readonly Clause[];
  judge(evidence: FamilyEvidence): readonly FamilyJudged[];
}

export function familyKind<const Kind extends string>(definition: FamilyKind<Kind>): FamilyKind<Kind> {
  return definition;
}
