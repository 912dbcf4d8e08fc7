import type { Finding } from '../../finding/finding.ts';
import type { Answer, Detector, Level, QuantityName } from '../../quantity/index.ts';
import type { Clause } from '../../source/source.ts';
import type { LoopScale, RegisterRow, RowName } from '../register.ts';

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
  return subject.rows.flatMap((row) => (acts(row.name) && row.level.known ? [{ row, level: row.level.value }] : []));
}

export function acts(name: RowName): name is 'alert' | 'trip' {
  return name === 'alert' || name === 'trip';
}

export function rowCalled(subject: AlarmCase, name: RowName): RegisterRow | undefined {
  return subject.rows.find((row) => row.name === name);
}
