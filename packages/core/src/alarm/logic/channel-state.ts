import { loopState, tellsValue } from '../../chain/formulas/loop-state.ts';
import type { ChannelState } from './voting.ts';

/**
 * What a loop current says against the current of a set point. A current by which the transmitter tells its own failure
 * says nothing of the machine: 21 mA is above every set point and still no trip. NAMUR NE 43 (second-hand).
 */
export function loopChannel(current: number, setPoint: number): ChannelState {
  if (!tellsValue(loopState(current))) return 'not-ok';
  return current > setPoint ? 'above' : 'below';
}

/** A fault of a loop is believed once it has stood this long, in seconds. NAMUR NE 43 (second-hand). */
export const faultPersistence = 4;

/** What a probe says: nothing where its gap voltage lies outside the voltages at which it counts as sound. */
export function probeChannel(
  gapVoltage: number,
  sound: { readonly low: number; readonly high: number },
  level: number,
  setPoint: number,
): ChannelState {
  if (gapVoltage < sound.low || gapVoltage > sound.high) return 'not-ok';
  return level > setPoint ? 'above' : 'below';
}
