import { type Answer, answer, unanswered } from '../quantity/index.ts';
import { type Bounded, bounded } from './element.ts';

/** How the torque of the driven machine follows the supply frequency of a converter-fed motor. */
export const torqueLaws = ['constant', 'linear', 'quadratic', 'unknown'] as const;
export type TorqueLaw = (typeof torqueLaws)[number];

/** Power of frequency in the torque: a hoist, a piston pump against no pressure, a fan. */
const power: Readonly<Record<Exclude<TorqueLaw, 'unknown'>, 0 | 1 | 2>> = { constant: 0, linear: 1, quadratic: 2 };

/** What a name plate says of the slip: in hertz of shaft speed, at the line frequency printed there. */
export interface RatedSlip {
  readonly slip: number;
  readonly lineFrequency: number;
}

/**
 * Slip at another line frequency: slip = rated slip · (f/f_rated)^m, with m = 0, 1, 2. Holds at constant flux (voltage
 * rises with frequency, up to rated frequency), where slip in hertz follows torque. An unknown law leaves it between
 * no load and rated load.
 */
export function slipAtFrequency(rated: RatedSlip, law: TorqueLaw, lineFrequency: number, of: string): Bounded {
  if (Math.abs(lineFrequency / rated.lineFrequency - 1) < 1e-9) return bounded(rated.slip);
  if (law === 'unknown') {
    const value = unanswered([{ of, what: 'torque law' }]);
    const belowRated = lineFrequency < rated.lineFrequency && rated.slip > 0;
    return belowRated ? { value, between: { low: 0, high: rated.slip } } : { value };
  }
  return bounded(rated.slip * (lineFrequency / rated.lineFrequency) ** power[law]);
}

/**
 * The line frequency f at which the shaft turns at f_r: f/p − slip(f) = f_r, p pole pairs; closed form for each law,
 * and the lower root of the quadratic one. Unknown where the law cannot reach the speed.
 */
export function frequencyAtSpeed(
  rated: RatedSlip,
  law: TorqueLaw,
  polePairs: number,
  speed: number,
  of: string,
): Answer<number> {
  if (law === 'unknown') return unanswered([{ of, what: 'torque law' }]);
  const perHertz = 1 / polePairs;
  const coefficient = rated.slip / rated.lineFrequency ** power[law];
  const beyond = unanswered([{ of, what: 'a torque law and rated slip that reach the operating speed' }]);
  if (power[law] === 0) return answer((speed + coefficient) * polePairs);
  if (power[law] === 1) return perHertz > coefficient ? answer(speed / (perHertz - coefficient)) : beyond;
  const discriminant = perHertz * perHertz - 4 * coefficient * speed;
  return discriminant < 0 ? beyond : answer((2 * speed) / (perHertz + Math.sqrt(discriminant)));
}
