import type { Clause } from '../../source/source.ts';

/** How set points follow from a baseline and the zone boundaries. Shares are plain numbers: 0.25 is 25 %. */
export interface AlarmPolicy {
  readonly name: string;
  readonly title: string;
  /** Alert = baseline + this share of B/C … */
  readonly alertMargin: number;
  /** … and never above this many times B/C. */
  readonly alertCap: number;
  /** Trip = this many times C/D … */
  readonly trip: number;
  /** … and never above this many times C/D. */
  readonly tripCap: number;
  readonly sources: readonly Clause[];
}

export function alarmPolicy(definition: AlarmPolicy): AlarmPolicy {
  return definition;
}
