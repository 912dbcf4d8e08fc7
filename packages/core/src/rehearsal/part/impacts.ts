import { type Answer, answer, asMotion, fromAll } from '../../quantity/index.ts';
import type { FrequencyCourse } from '../course.ts';
import type { Canvas, ImpactsPart, Mode } from './part.ts';
import { grown } from './tone.ts';

/** A blow is followed until this share of its first swing is left. */
const dieAway = 1e-4;

/**
 * A train of blows: the k-th falls where the cycles reach the sum of k intervals 1 + σ·ξ, ξ normal, so that the elements
 * slip at random and the lines smear more with every harmonic (Antoni and Randall 2003); each blow rings modes
 * a·e^(−ζωt)·sin(ω√(1−ζ²)·t) whose sum has the stated peak, times the load at the place of the spot (McFadden and Smith
 * 1984). Blows start between samples where they fall there.
 */
export function writeImpacts(part: ImpactsPart, canvas: Canvas): Answer<void> {
  const { samples, course, motion, random } = canvas;
  // Blows are accelerations; a displacement of them is too small to show at a probe.
  if (motion !== 'acceleration' || course.stands) return answer(undefined);
  const weighing: Answer<FrequencyCourse | undefined> =
    part.weighed === undefined ? answer(undefined) : course.follow(part.weighed.of);
  return fromAll({ along: course.follow(part.of), weighing }, ({ along, weighing: turning }) => {
    const middle = part.modes[0]!.frequency;
    const peak = asMotion(part.level, 'acceleration', middle).value;
    const modes = part.modes.filter(({ frequency }) => frequency < 0.39 * course.rate);
    const scale = peak / peakOf(part.modes, course.rate);
    const growth = grown(part.grows ?? 0, canvas);
    const turnOffset = random.uniform();
    let next = random.uniform();
    let count = 0;
    for (let index = 1; index < samples.length; index++) {
      const [before, now] = [along.cycles(index - 1), along.cycles(index)];
      while (next <= now && now > before) {
        const instant = index - 1 + (next - before) / (now - before);
        const turn = turning === undefined ? 0 : turning.cycles(index) + turnOffset;
        const weight = part.weighed?.weight(turn - Math.floor(turn)) ?? 1;
        const alternate = count % 2 === 1 ? (part.alternate ?? 1) : 1;
        const strength = scale * weight * alternate * growth(index) * (1 + part.scatter * random.normal());
        for (const mode of modes) ring(samples, instant, mode, strength * mode.share, course.rate);
        next += Math.max(0.05, 1 + part.slip * random.normal());
        count += 1;
      }
    }
  });
}

/** Adds one ringing mode from an instant between samples; the turning pointer saves a sine for every sample. */
function ring(samples: Float64Array, instant: number, { frequency, damping }: Mode, strength: number, rate: number) {
  if (strength === 0) return;
  const omega = (2 * Math.PI * frequency) / rate;
  const decay = damping * omega;
  const damped = omega * Math.sqrt(1 - damping * damping);
  const first = Math.ceil(instant);
  const last = Math.min(samples.length, first + Math.ceil(-Math.log(dieAway) / decay));
  const late = first - instant;
  let [re, im] = [Math.exp(-decay * late) * Math.cos(damped * late), Math.exp(-decay * late) * Math.sin(damped * late)];
  const [c, s] = [Math.exp(-decay) * Math.cos(damped), Math.exp(-decay) * Math.sin(damped)];
  for (let index = first; index < last; index++) {
    samples[index]! += strength * im;
    [re, im] = [re * c - im * s, re * s + im * c];
  }
}

/** Highest swing of the sum of some modes of share, either way. */
function peakOf(modes: readonly Mode[], rate: number): number {
  const step = 1 / (64 * Math.max(rate / 64, ...modes.map(({ frequency }) => frequency)));
  const longest = Math.max(...modes.map(({ frequency, damping }) => 2 / (frequency * Math.min(1, 20 * damping))));
  let peak = 0;
  for (let t = 0; t < longest; t += step) {
    let sum = 0;
    for (const { frequency, damping, share } of modes) {
      const omega = 2 * Math.PI * frequency;
      sum += share * Math.exp(-damping * omega * t) * Math.sin(omega * Math.sqrt(1 - damping * damping) * t);
    }
    peak = Math.max(peak, Math.abs(sum));
  }
  return peak;
}
