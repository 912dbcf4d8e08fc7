import { Broken } from '../../quantity/index.ts';
import { type ChannelState, type FaultAction, type Voting, vote } from './voting.ts';

/** What is done with a set point while the machine runs up: nothing, no alarm at all, or a higher set point. */
export const startActions = ['none', 'inhibit', 'multiply'] as const;
export type StartAction = (typeof startActions)[number];

/** One set point as it is configured. Times in seconds, the level in the unit of the samples. */
export interface AlarmSetting {
  readonly level: number;
  readonly voting: Voting;
  readonly whenNotOk: FaultAction;
  readonly delay: number;
  /** Share of the set point by which a channel must fall below it before it counts as below again. */
  readonly hysteresis: number;
  readonly start: { readonly action: StartAction; readonly factor: number; readonly time: number };
}

/** What every channel reads at a time: a level, or that it is not OK. */
export interface AlarmSample {
  readonly time: number;
  readonly channels: readonly (number | 'not-ok')[];
}

export interface AlarmEvent {
  readonly time: number;
  /** `acts` after the delay, `resets` below the hysteresis; a fault is told beside them and is neither. */
  readonly is: 'acts' | 'resets' | 'fault' | 'sound' | 'blind';
}

/**
 * What an alarm does with a row of samples, the first of which is the start of the machine. A channel counts as above
 * from its set point until it falls below the set point less the hysteresis. The vote must hold without a break for the
 * delay. During `inhibit` no channel votes; during `multiply` the set point is higher.
 */
export function alarmRun(setting: AlarmSetting, samples: readonly AlarmSample[]): readonly AlarmEvent[] {
  const start = samples[0]?.time ?? 0;
  const stood = new Array<boolean>(setting.voting.of).fill(false);
  const events: AlarmEvent[] = [];
  let holdsSince: number | undefined;
  let [acting, faults, blind] = [false, 0, false];
  let last = Number.NEGATIVE_INFINITY;
  for (const { time, channels } of samples) {
    if (time < last) throw new Broken('samples follow each other in time', { time, last });
    last = time;
    const starting = time - start < setting.start.time;
    const level = setting.level * (starting && setting.start.action === 'multiply' ? setting.start.factor : 1);
    const silent = starting && setting.start.action === 'inhibit';
    const states = channels.map((value, index): ChannelState => {
      if (value === 'not-ok') {
        stood[index] = false;
        return 'not-ok';
      }
      stood[index] = !silent && value > (stood[index] ? level * (1 - setting.hysteresis) : level);
      return stood[index] ? 'above' : 'below';
    });
    const now = vote(setting.voting, states, setting.whenNotOk);
    const holds = now.holds && !silent;
    if (now.faults !== faults) events.push({ time, is: now.faults > faults ? 'fault' : 'sound' });
    if (now.blind && !blind) events.push({ time, is: 'blind' });
    [faults, blind] = [now.faults, now.blind];
    holdsSince = holds ? (holdsSince ?? time) : undefined;
    if (!acting && holdsSince !== undefined && time - holdsSince >= setting.delay) {
      acting = true;
      events.push({ time, is: 'acts' });
    } else if (acting && !holds) {
      acting = false;
      events.push({ time, is: 'resets' });
    }
  }
  return events;
}

/** When it first acts, in the time of the samples; nothing where it never does. */
export function firstAction(events: readonly AlarmEvent[]): number | undefined {
  return events.find((each) => each.is === 'acts')?.time;
}
