import { type Level, level, levelField, quantityField, Refusal } from '../../quantity/index.ts';
import { optional } from '../../quantity/stated.ts';
import { api617 } from '../../source/api-617.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';

/** Most a new machine may vibrate in the shop, peak-to-peak in metres, and the speed above which it is less. */
const most = 25.4e-6;
const from = 12_000 / 60;
/** Run-out is a quarter of what is accepted, and never asked below a quarter of a mil. */
const runoutShare = 0.25;
/** Below this no run-out is asked for, however small the acceptance. */
export const leastRunout = 6.35e-6;

/**
 * Shop acceptance of relative shaft vibration, peak-to-peak in metres: 25.4 µm · √(12 000/N), at most 25.4 µm; N in
 * r/min, `speed` in hertz and above zero. Source: API 617, from memory.
 */
export function shaftAcceptance(speed: number): Level<'displacement'> {
  if (!(speed > 0)) throw new Refusal({ read: `speed=${speed} Hz`, expected: 'a shaft speed above zero' });
  return level('displacement', Math.min(most, most * Math.sqrt(from / speed)), 'peak-to-peak');
}

/**
 * Mechanical and electrical run-out allowed under a probe: a quarter of the acceptance, or 6.35 µm where that is more.
 * Source: API 670, from memory (some remember 6 µm).
 */
export function runoutAllowance(acceptance: Level<'displacement'>): Level<'displacement'> {
  return level('displacement', Math.max(runoutShare * acceptance.value, leastRunout), 'peak-to-peak');
}

const displacement = (meaning: string, symbol: string) =>
  levelField(['displacement'], meaning, { symbol, example: '25.4 um pp' });

export const shaftAcceptanceWorking = working({
  name: 'shaft-acceptance',
  title: 'Shop acceptance of shaft vibration and the run-out it allows',
  inputs: {
    speed: quantityField('shaft speed', 'Highest continuous speed', { symbol: 'N', example: '11400 r/min' }),
    acceptance: optional(displacement('Acceptance agreed on; left out: from the speed', 'A')),
  },
  outputs: {
    accepted: output(
      displacement('Most a new machine may vibrate in the shop', 'A_s'),
      `A_s = min(25.4 µm, 25.4 µm · √(12000/(N/(1 r/min))))`,
    ),
    runout: output(displacement('Run-out allowed under a probe', 'R'), 'R = max(0.25 · A_s, 6.35 µm)'),
  },
  holds:
    'relative shaft vibration of compressors, peak-to-peak, run-out included. All numbers from memory: confirm in a licensed copy. An acceptance that was agreed on takes the place of the curve.',
  sources: [clause(api617, 'vibration limit', 'from memory'), clause(api670, 'run-out', 'from memory')],
  evaluate: ({ speed, acceptance }) => {
    const accepted = acceptance ?? shaftAcceptance(speed);
    if (accepted.detector !== 'peak-to-peak') {
      throw new Refusal({ read: `a ${accepted.detector} displacement`, expected: 'an acceptance peak-to-peak' });
    }
    return { accepted, runout: runoutAllowance(accepted) };
  },
  example: { speed: '11400 r/min' },
});
