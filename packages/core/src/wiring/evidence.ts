import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { type Printed, printed } from '../working/printed.ts';
import { humAsVibration } from './hum.ts';

/** Printed numbers of the formulas of the wiring, from other hands. */
export const wiringEvidence: readonly Printed[] = [
  printed({
    working: humAsVibration,
    given: { voltage: '1 mV rms', frequency: '50 Hz', sensitivity: '100 mV/g' },
    printed: { acceleration: '0.01 g rms', velocity: '0.31 mm/s rms' },
    source: clause(tradePractice, '1 mV of hum on 100 mV/g'),
  }),
];
