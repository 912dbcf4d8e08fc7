import type { Finding } from '../../finding/finding.ts';
import type { Answer, Detector, Level, QuantityName, Sheet, Stated } from '../../quantity/index.ts';
import type { Clause } from '../../source/source.ts';
import type { alarmLogicSheet, responseTimeSheet } from '../logic/statement.ts';
import { type Deed, deeds, type LoopScale, type RegisterEntry, type RegisterRow } from '../register.ts';

/** Everything a rule of the register may look at. What a point does not have is left out; what is unknown is unanswered. */
export interface AlarmCase {
  readonly at: string;
  readonly rows: readonly RegisterRow[];
  readonly loop?: Answer<LoopScale>;
  /** What the sensor or the instrument puts out. */
  readonly output?: Answer<{ readonly quantity: QuantityName; readonly detector: Detector }>;
  readonly noiseFloor?: Answer<Level>;
  /** Shaft speed in hertz, at its slowest. */
  readonly slowest?: Answer<number>;
  /** Level of this machine when it was well, with where it comes from. */
  readonly baseline?: Stated<Level>;
  /** How a trip is decided, where somebody began to state it. */
  readonly logic?: Sheet<typeof alarmLogicSheet>;
  readonly response?: Sheet<typeof responseTimeSheet>;
}

/** One thing that is wrong with set points: what it asks, why, and a case that passes and one that fails. */
export interface AlarmRule {
  readonly rule: string;
  readonly title: string;
  readonly prose: string;
  readonly sources: readonly Clause[];
  findings(subject: AlarmCase): readonly Finding[];
  readonly passes: AlarmCase;
  readonly fails: AlarmCase;
}

export function alarmRule(definition: AlarmRule): AlarmRule {
  return definition;
}

/** The rows that act, where their level is known. */
export function acting(subject: AlarmCase): readonly { readonly row: RegisterRow; readonly level: Level }[] {
  return subject.rows.flatMap((row) =>
    deedOf(row) !== undefined && row.level.known ? [{ row, level: row.level.value }] : [],
  );
}

/** What a row does; a row called `alert` or `trip` does that. */
export function deedOf({ name, does }: Pick<RegisterEntry, 'name' | 'does'>): Deed | undefined {
  return does ?? deeds.find((each) => each === name);
}

export function rowsThat(deed: Deed, subject: AlarmCase): readonly RegisterRow[] {
  return subject.rows.filter((row) => deedOf(row) === deed);
}
