import { type Answer, answer, Broken } from '../../quantity/index.ts';
import { type Complex, complex, difference, magnitude, scaled, sum } from '../complex.ts';
import { notThere, type PairGathering } from './gathering.ts';
import { moments } from './moments.ts';
import type { Tone } from './tone.ts';

/** Where two probes look at a shaft: angles from one axis, counted anticlockwise as seen by the observer, in radians. */
export interface ProbeAngles {
  readonly first: number;
  readonly second: number;
}

/** The direction in which the shaft turns, as seen by the observer the angles are counted for. */
export type Rotating = 'anticlockwise' | 'clockwise';

/** A phasor of each axis: x(t) = Re(X·e^(jωt)), peak, in the unit of the record. */
export interface ShaftVectors {
  readonly x: Complex;
  readonly y: Complex;
}

/** What a shaft does at one frequency. */
export interface Whirl {
  /** Radii of the two circles that make the ellipse, one turning with the shaft, one against it. */
  readonly forward: number;
  readonly backward: number;
  /** Forward where the first is larger; `on a line` where they differ by less than a fiftieth of their sum. */
  readonly precession: 'forward' | 'backward' | 'on a line';
  /** Half axes of the ellipse: forward + backward, |forward − backward|. */
  readonly major: number;
  readonly minor: number;
  /** Of the long axis from the axis that angles are counted from, in radians in (−π/2, π/2]. */
  readonly inclination: number;
}

/** The phasor of a tone, peak, A·e^(jφ). */
export function phasorOf({ amplitude, phase }: Tone): Complex {
  return complex(amplitude * Math.cos(phase), amplitude * Math.sin(phase));
}

/** A vector less what the slow shaft showed there, runout: V − V_slow, both against the same mark on the shaft. */
export function withoutSlowRoll(vector: Complex, slowRoll: Complex): Complex {
  return difference(vector, slowRoll);
}

/** What two probes see, turned into x and y: u_i = x·cos α_i + y·sin α_i solved for both. */
export function shaftVectors(first: Complex, second: Complex, angles: ProbeAngles): ShaftVectors {
  const { xFirst, xSecond, yFirst, ySecond } = solved(angles);
  return {
    x: sum(scaled(first, xFirst), scaled(second, xSecond)),
    y: sum(scaled(first, yFirst), scaled(second, ySecond)),
  };
}

/** Forward and backward radius |X ± jY|/2 and the ellipse they make, in the unit of the vectors. */
export function whirl({ x, y }: ShaftVectors, rotating: Rotating): Whirl {
  // r = x + jy = F·e^(jωt) + B·e^(−jωt): F = (X + jY)/2, B = (X* + jY*)/2.
  const anticlockwise = complex((x.re - y.im) / 2, (x.im + y.re) / 2);
  const clockwise = complex((x.re + y.im) / 2, (y.re - x.im) / 2);
  const [forwardVector, backwardVector] =
    rotating === 'anticlockwise' ? [anticlockwise, clockwise] : [clockwise, anticlockwise];
  const [forward, backward] = [magnitude(forwardVector), magnitude(backwardVector)];
  const both = Math.atan2(anticlockwise.im, anticlockwise.re) + Math.atan2(clockwise.im, clockwise.re);
  const half = both / 2;
  const inclination = half - Math.PI * Math.round(half / Math.PI);
  return {
    forward,
    backward,
    precession:
      Math.abs(forward - backward) <= (forward + backward) / 50
        ? 'on a line'
        : forward > backward
          ? 'forward'
          : 'backward',
    major: forward + backward,
    minor: Math.abs(forward - backward),
    inclination,
  };
}

/** How far a shaft goes, from two probes. */
export interface OrbitExtent {
  readonly samples: number;
  readonly notFinite: number;
  /** Mean of each probe: where the shaft stands, as a gap once the slope of the probe is known. */
  readonly firstGap: number;
  readonly secondGap: number;
  /** Mean position in x and y. */
  readonly x: number;
  readonly y: number;
  /** Greatest √(x² + y²) from the mean position. */
  readonly sMax: number;
  /** Greatest distance of two places of the orbit. */
  readonly peakToPeakMax: number;
  readonly firstPeakToPeak: number;
  readonly secondPeakToPeak: number;
}

const most = 4096;

/**
 * S_max, the greatest distance √(x² + y²) from the mean position, in the unit of the record (ISO 7919-1 and 20816-1, from
 * memory), the greatest distance of two places, and the gaps. In one pass: only places on the convex hull can be farthest.
 */
export function orbitExtent(angles: ProbeAngles): PairGathering<Answer<OrbitExtent>> {
  const { xFirst, xSecond, yFirst, ySecond } = solved(angles);
  const [firstMoments, secondMoments] = [moments(), moments()];
  const [xs, ys] = [new Float64Array(most), new Float64Array(most)];
  let [kept, notFinite] = [0, 0];
  const prune = () => {
    const hull = convexHull(xs, ys, kept);
    const places = hull.map((k) => [xs[k]!, ys[k]!] as const);
    for (const [k, [x, y]] of places.entries()) {
      xs[k] = x;
      ys[k] = y;
    }
    kept = places.length;
  };
  return {
    take(first, second) {
      if (first.length !== second.length) {
        throw new Broken('two channels give blocks of one length', { first: first.length, second: second.length });
      }
      const [one, two] = [Float64Array.from(first), Float64Array.from(second)];
      for (let n = 0; n < one.length; n++) {
        const [u, v] = [one[n]!, two[n]!];
        if (!(Number.isFinite(u) && Number.isFinite(v))) {
          notFinite++;
          one[n] = two[n] = Number.NaN;
          continue;
        }
        if (kept === most) prune();
        xs[kept] = xFirst * u + xSecond * v;
        ys[kept++] = yFirst * u + ySecond * v;
      }
      firstMoments.take(one);
      secondMoments.take(two);
    },
    result() {
      const [one, two] = [firstMoments.result(), secondMoments.result()];
      if (!one.known || !two.known) return notThere('at least one sample that is a finite number in both channels');
      const x = xFirst * one.value.mean + xSecond * two.value.mean;
      const y = yFirst * one.value.mean + ySecond * two.value.mean;
      prune();
      let [sMax, peakToPeakMax] = [0, 0];
      for (let k = 0; k < kept; k++) {
        sMax = Math.max(sMax, Math.hypot(xs[k]! - x, ys[k]! - y));
        for (let m = 0; m < k; m++)
          peakToPeakMax = Math.max(peakToPeakMax, Math.hypot(xs[k]! - xs[m]!, ys[k]! - ys[m]!));
      }
      return answer({
        samples: one.value.samples,
        notFinite,
        firstGap: one.value.mean,
        secondGap: two.value.mean,
        x,
        y,
        sMax,
        peakToPeakMax,
        firstPeakToPeak: one.value.peakToPeak,
        secondPeakToPeak: two.value.peakToPeak,
      });
    },
  };
}

/** x = xFirst·u₁ + xSecond·u₂ and so for y. */
function solved({ first, second }: ProbeAngles) {
  const determinant = Math.sin(second - first);
  if (Math.abs(determinant) < 0.05)
    throw new Broken('two probes of an orbit look from different sides', { first, second });
  return {
    xFirst: Math.sin(second) / determinant,
    xSecond: -Math.sin(first) / determinant,
    yFirst: -Math.cos(second) / determinant,
    ySecond: Math.cos(first) / determinant,
  };
}

/** Places on the convex hull, by Andrew's chain: the lower one from left to right, then the upper one back. */
function convexHull(xs: Float64Array, ys: Float64Array, count: number): readonly number[] {
  const order = Array.from({ length: count }, (_, k) => k).sort((a, b) => xs[a]! - xs[b]! || ys[a]! - ys[b]!);
  const turnsRight = (a: number, b: number, c: number) =>
    (xs[b]! - xs[a]!) * (ys[c]! - ys[a]!) - (ys[b]! - ys[a]!) * (xs[c]! - xs[a]!) <= 0;
  const chain = (places: readonly number[]) => {
    const hull: number[] = [];
    for (const place of places) {
      while (hull.length >= 2 && turnsRight(hull.at(-2)!, hull.at(-1)!, place)) hull.pop();
      hull.push(place);
    }
    return hull;
  };
  const [lower, upper] = [chain(order), chain([...order].reverse())];
  return [...new Set([...lower, ...upper])];
}
