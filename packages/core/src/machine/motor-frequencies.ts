/** Synchronous speed n_s = f_L/pole pairs = 2·f_L/p in hertz (120·f_L/p in r/min); p poles. */
export function synchronousSpeed(lineFrequency: number, poles: number): number {
  return (2 * lineFrequency) / poles;
}

/** Slip frequency f_s = n_s − n, in hertz of shaft speed. */
export function slipFrequency(lineFrequency: number, poles: number, speed: number): number {
  return synchronousSpeed(lineFrequency, poles) - speed;
}

/** Pole pass F_p = p·f_s, which is twice the line frequency times the slip ratio. Source: trade notes (second-hand). */
export function polePass(lineFrequency: number, poles: number, speed: number): number {
  return poles * slipFrequency(lineFrequency, poles, speed);
}

/** The even pole count whose synchronous speed lies nearest above a speed: what a 980 r/min plate at 50 Hz asks for. */
export function polesForSpeed(lineFrequency: number, speed: number): number {
  return Math.max(2, 2 * Math.floor(lineFrequency / speed + 1e-9));
}

/** Slip above which a rated speed and a pole count are not believed together. Common practice, no source. */
export const implausibleSlip = 0.08;
