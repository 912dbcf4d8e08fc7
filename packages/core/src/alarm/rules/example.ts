import { answer, type Level, level, type Stated, si, stated, type Time } from '../../quantity/index.ts';
import type { StartAction } from '../logic/alarm-run.ts';
import type { FaultAction, VotingName } from '../logic/voting.ts';
import { type RegisterEntry, register } from '../register.ts';
import type { AlarmCase } from './rule.ts';

export const rms = (millimetresPerSecond: number): Level => level('velocity', millimetresPerSecond / 1000, 'rms');
export const seconds = (value: number): Stated<Time> => stated(si('time', value), `${value} s`);

interface Changes {
  readonly alert?: Level;
  readonly trip?: Level;
  readonly delay?: Stated<Time>;
  readonly subject?: Partial<AlarmCase>;
}

interface StatedLogic {
  readonly voting?: VotingName;
  readonly whenNotOk?: FaultAction;
  readonly hysteresis?: number;
  readonly atStart?: StartAction;
  readonly startFactor?: number;
  readonly startTime?: number;
}

/** Sound logic of a trip, with what is changed in it. */
export function logic(changes: StatedLogic): NonNullable<AlarmCase['logic']> {
  const entries = Object.entries({ voting: '2oo2', whenNotOk: 'degrade', ...changes });
  const values = Object.fromEntries(entries.map(([name, value]) => [name, stated(value, String(value))]));
  // Every value was made for its own field just above.
  return { of: 'trip logic', values: values as unknown as NonNullable<AlarmCase['logic']>['values'] };
}

/** Waits of half a second each, and how long the trip may take. */
export function response(allowed: Stated<number>): NonNullable<AlarmCase['response']> {
  const half = seconds(0.5);
  const values = { detector: half, filter: half, scan: half, finalElement: half, allowed: allowed as Stated<Time> };
  return { of: 'response time', values };
}

/** A sound register to show what a rule passes, and, with one change, what it does not. */
export function exampleCase({
  alert = rms(4),
  trip = rms(9),
  delay = seconds(3),
  subject = {},
}: Changes = {}): AlarmCase {
  const loop = answer({ low: rms(0), high: rms(25) });
  const entries: readonly RegisterEntry[] = [
    { name: 'alert', level: answer(alert), because: 'example', delay },
    { name: 'trip', level: answer(trip), because: 'example', delay },
  ];
  return {
    at: 'P-1/pump/drive-end/horizontal',
    rows: register(entries, { loop }),
    loop,
    output: answer({ quantity: 'velocity', detector: 'rms' }),
    noiseFloor: answer(rms(0.05)),
    slowest: answer(12.5),
    ...subject,
  };
}
