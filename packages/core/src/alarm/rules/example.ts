import { answer, type Level, level, type Stated, si, stated, type Time } from '../../quantity/index.ts';
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
