import { type Answer, answerOf, type Length, type Sheet, type Stated, si } from '../quantity/index.ts';
import type { PowerCable, separationSheet } from './statement.ts';

/** Least distances between a signal cable and power cables that run along it: practice of the trade, no source. */
const usualDistance: Readonly<Record<Exclude<PowerCable, 'none'>, Length>> = {
  'low voltage': si('length', 0.3),
  'converter drive': si('length', 0.5),
  'medium voltage': si('length', 1),
};

export interface LeastDistance {
  readonly distance: Answer<number>;
  /** Whose it is. */
  readonly from: string;
}

/** The distance the owner asks for, otherwise that of practice. */
export function leastDistance(
  beside: Exclude<PowerCable, 'none'>,
  separation: Sheet<typeof separationSheet> | undefined,
): LeastDistance {
  const own: Readonly<Record<typeof beside, Stated<Length> | undefined>> = {
    'low voltage': separation?.values.lowVoltage,
    'converter drive': separation?.values.converterDrive,
    'medium voltage': separation?.values.mediumVoltage,
  };
  const stated = own[beside];
  if (separation === undefined || stated === undefined) {
    return { distance: { known: true, value: usualDistance[beside] }, from: 'common practice, no source' };
  }
  const { source } = separation.values;
  return {
    distance: answerOf<number>(stated, separation.of, `distance from ${beside} cables`),
    from: source?.known === true ? source.value : 'the owner',
  };
}
