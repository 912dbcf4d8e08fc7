/**
 * Samples per line, an analyser's ratio of sampling rate to highest frequency: 2.56 as the whole-number ratio 64/25,
 * so that 400 lines give 1024 samples exactly. Source: analyser practice.
 */
export const samplesPerLine = 64 / 25;

/** f_s = 2.56 · F_max, both in hertz. */
export function samplingRateFor(highestFrequency: number): number {
  return (highestFrequency * 64) / 25;
}

/** N = 2.56 · L. A whole number only where L is a multiple of 25. */
export function samplesFor(lines: number): number {
  return (lines * 64) / 25;
}

/** T = L / F_max in seconds: how long one record lasts. */
export function recordLength(lines: number, highestFrequency: number): number {
  return lines / highestFrequency;
}

/** df = F_max / L in hertz: the distance of the lines, 1/T. */
export function lineDistance(lines: number, highestFrequency: number): number {
  return highestFrequency / lines;
}
