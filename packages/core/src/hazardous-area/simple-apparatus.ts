import { iec60079x11 } from '../source/iec-60079-11.ts';
import { type Clause, clause } from '../source/source.ts';
import { atMost } from './at-most.ts';

/** What a part gives out by itself: a coil that moves, a couple. */
export interface OwnSource {
  readonly voltage: number;
  readonly current: number;
  readonly power: number;
}

/** Beyond any of these a source of its own is no simple apparatus: 1.5 V, 100 mA, 25 mW. */
export const simpleApparatusLimits: OwnSource = { voltage: 1.5, current: 0.1, power: 0.025 };

/**
 * Whether a source is weak enough for simple apparatus. Terminals and switches make nothing and pass; what they store
 * still counts in the comparison. Source: IEC 60079-11 (from memory).
 */
export function mayBeSimpleApparatus(source: OwnSource): boolean {
  return (
    atMost(source.voltage, simpleApparatusLimits.voltage) &&
    atMost(source.current, simpleApparatusLimits.current) &&
    atMost(source.power, simpleApparatusLimits.power)
  );
}

export const simpleApparatusSource: Clause = clause(iec60079x11, 'simple apparatus');
