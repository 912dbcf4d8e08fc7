import { asMotion, asSineDetector, type Level, type Motion, Refusal } from '../quantity/index.ts';
import { randomFrom } from '../uncertainty/random.ts';
import type { MotionContent, RehearsedMotion } from './rehearsed-motion.ts';

/** A tap: half a sine of this many seconds, the next one so many seconds later. Common practice, no source. */
const tap = { least: 1e-4, most: 2e-4, apart: 0.45, first: 0.4 } as const;

/**
 * The motion with taps beside the transducer: half sines of 0.1 ms to 0.2 ms, as a small hard tip gives them, unevenly
 * strong and never exactly on a sample, 0.45 s apart. `highest` is the peak of the strongest.
 */
export function withTaps(motion: RehearsedMotion, count: number, highest: Level<Motion>): RehearsedMotion {
  if (motion.motion !== 'acceleration') {
    throw new Refusal({ read: `taps at ${motion.of}`, expected: 'a transducer on the casing: a tap moves a casing' });
  }
  const { rate, lead, samples } = motion;
  const random = randomFrom((motion.script.seed ^ 0x7a_70) >>> 0);
  const struck = samples.slice();
  const peak = asMotion(asSineDetector(highest, 'peak'), 'acceleration', 1 / (2 * tap.most)).value;
  for (let each = 0; each < count; each++) {
    const at = lead + rate * (tap.first + tap.apart * each + 0.01 * random.uniform());
    const width = rate * (tap.least + (tap.most - tap.least) * random.uniform());
    const height = peak * (0.6 + 0.4 * random.uniform());
    for (let n = Math.ceil(at); n < Math.min(at + width, struck.length); n++) {
      struck[n]! += height * Math.sin((Math.PI * (n - at)) / width);
    }
  }
  const name = `${count} taps, the strongest`;
  return { ...motion, samples: struck, contents: [...motion.contents, done(name, highest)] };
}

/** The motion of a calibrator: a sine of a level at a frequency, in the motion the record is made of. */
export function withCalibrator(motion: RehearsedMotion, level: Level<Motion>, frequency: number): RehearsedMotion {
  const { rate, lead, samples } = motion;
  if (frequency >= rate / 4) {
    throw new Refusal({
      read: `a calibrator at ${frequency} Hz`,
      expected: `a frequency below half the rate of the record, ${rate / 4} Hz`,
    });
  }
  const peak = asMotion(asSineDetector(level, 'peak'), motion.motion, frequency).value;
  const angle = (2 * Math.PI * frequency) / rate;
  // It is on before the record begins, and has come up slowly.
  const rise = (n: number) => (n < lead / 2 ? 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / lead) : 1);
  return {
    ...motion,
    samples: samples.map((each, n) => each + peak * rise(n) * Math.sin(angle * n)),
    contents: [...motion.contents, { ...done('calibrator', level), frequency: { first: frequency, last: frequency } }],
  };
}

function done(name: string, level: Level<Motion>): MotionContent {
  return { name, by: 'occasion', level, assumed: [] };
}
