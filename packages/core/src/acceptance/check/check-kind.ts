import type { DesignedMachine, DesignedPoint } from '../../design/design.ts';
import { type Measure, type Said, said } from '../../finding/measure.ts';
import { type Missing, theMissing } from '../../quantity/index.ts';
import type { Clause } from '../../source/source.ts';
import type { MeasuredRecord, ServingChannel } from '../measured-record.ts';
import type { OccasionName } from '../occasion/kinds.ts';
import type { ReadingName, ReadingTable } from '../reading/kinds.ts';

/** What a check may say. `cannot tell` is a verdict, not a failure: it says what would be needed. */
export const checkVerdicts = ['meets', 'fails', 'cannot tell'] as const;
export type CheckVerdict = (typeof checkVerdicts)[number];

/** Something that would explain what was found: what in the record speaks for it, and the next cheap test. */
export interface RivalCause {
  readonly cause: Said;
  readonly evidence: Said;
  readonly next: Said;
}

/** What a check found. */
export interface Judged {
  /** What exactly was looked at, where one check looks at several: `50 Hz`, `upper rail`. */
  readonly of?: string;
  readonly expected: Said;
  /** How far it may be off, and why so far. */
  readonly tolerance: Said;
  readonly found: Said;
  /** Within which the true value lies with 95 %, where that can be told. */
  readonly interval?: Measure;
  readonly verdict: CheckVerdict;
  readonly because: Said;
  /** Rival causes, the one with most evidence first; empty where the check meets. */
  readonly causes: readonly RivalCause[];
  /** Of a check that cannot tell: what would be needed. */
  readonly needs: readonly Said[];
}

/** What a check looks at: one record, the point it was made at as designed, and every other record of the session. */
export interface CheckedRecord {
  readonly designed: DesignedPoint;
  readonly machine: DesignedMachine;
  readonly record: MeasuredRecord;
  readonly others: readonly MeasuredRecord[];
  /** Channels of the same recording that are no points: the mark of each turn, a reference. */
  readonly serving: readonly ServingChannel[];
  /** Every point that has records, by its place. */
  readonly points: ReadonlyMap<string, DesignedPoint>;
}

/** A table that was read off by hand, and the point it was read at as designed. */
export interface CheckedTable {
  readonly designed: DesignedPoint;
  readonly machine: DesignedMachine;
  readonly table: ReadingTable;
}

/** A check of a commissioning: one file, one line in `kinds.ts`. */
export interface CheckKind<Kind extends string = string> {
  readonly kind: Kind;
  readonly title: string;
  /** The question it answers, for people. */
  readonly question: string;
  /** Records made on these occasions can answer it. */
  readonly on: readonly OccasionName[];
  /** Whether it makes sense for this chain at all: a loop has no bias. */
  applies(designed: DesignedPoint): boolean;
  judge(looked: CheckedRecord): readonly Judged[];
  /** Tables that were read off by hand and can answer it, and how; none where left out. */
  readonly tables?: { readonly of: readonly ReadingName[]; judge(looked: CheckedTable): readonly Judged[] };
  readonly sources: readonly Clause[];
}

export function checkKind<const Kind extends string>(definition: CheckKind<Kind>): CheckKind<Kind> {
  return definition;
}

type Facts = Pick<Judged, 'expected' | 'tolerance' | 'found' | 'because'> & Pick<Partial<Judged>, 'of' | 'interval'>;

export function meets(facts: Facts): Judged {
  return { ...facts, verdict: 'meets', causes: [], needs: [] };
}

export function fails(facts: Facts, causes: readonly RivalCause[]): Judged {
  return { ...facts, verdict: 'fails', causes, needs: [] };
}

/** What stands in the way, and what would be needed. */
export function cannotTell(facts: Partial<Facts> & { readonly because: Said }, needs: readonly Said[]): Judged {
  return {
    expected: '—',
    tolerance: '—',
    found: '—',
    ...facts,
    verdict: 'cannot tell',
    causes: [],
    needs,
  };
}

/** What is missing, as a check that cannot tell for want of it. */
export function wants(missing: readonly Missing[]): readonly Judged[] {
  return [cannotTell({ because: said`It needs ${theMissing(missing)}.` }, ['the answers named'])];
}
