import type { CableNeighbours } from '../demand/hazardous-area.ts';
import { iec60079x14 } from '../source/iec-60079-14.ts';
import { type Clause, clause } from '../source/source.ts';

/** What must be reckoned with between the circuits of one cable. */
export interface CableFaults {
  readonly meaning: string;
  readonly shortCircuits: number;
  readonly openCircuits: number;
  /** Whether the circuits may be compared one by one. */
  readonly apart: boolean;
}

/** Source: IEC 60079-14 (from memory). */
const entries: Readonly<Record<CableNeighbours, CableFaults>> = {
  'own cable': { meaning: 'one circuit alone in its cable', shortCircuits: 0, openCircuits: 0, apart: true },
  'type A': { meaning: 'every circuit in a screen of its own', shortCircuits: 0, openCircuits: 0, apart: true },
  'type B': {
    meaning: 'fixed and protected against damage, no circuit above 60 V',
    shortCircuits: 0,
    openCircuits: 0,
    apart: true,
  },
  'type C': {
    meaning: 'fixed, without such protection: cores may touch and break',
    shortCircuits: 2,
    openCircuits: 4,
    apart: false,
  },
  other: {
    meaning: 'any cores may touch and break',
    shortCircuits: Number.MAX_SAFE_INTEGER,
    openCircuits: Number.MAX_SAFE_INTEGER,
    apart: false,
  },
};

export function cableFaults(kind: CableNeighbours): CableFaults {
  return entries[kind];
}

export const multicoreSource: Clause = clause(iec60079x14, 'multi-core cables');
