import { type Answer, asSineDetector, fromAll, motionOrder } from '../../quantity/index.ts';
import { type FrequencyCourse, keepsStill } from '../course.ts';
import type { Canvas, Modulation, TonePart } from './part.ts';

/**
 * A tone as samples of the motion of the canvas: peak·(2πf)^k·cos(2π·cycles + φ + k·90°), f the frequency at that instant
 * and k the differentiations from the motion of its level. Above 0.39 of the rate it is left out, as a record could not
 * tell it from an alias.
 */
export function writeTone(part: TonePart, canvas: Canvas): Answer<void> {
  const { samples, motion, course, random } = canvas;
  const phase = part.phase ?? 2 * Math.PI * random.uniform();
  const order = motionOrder[motion] - motionOrder[part.level.quantity];
  const peak = asSineDetector(part.level, 'peak').value;
  const highest = 0.39 * course.rate;
  return fromAll(
    { along: course.follow(part.of), strength: modulated(part.modulatedBy ?? [], canvas) },
    ({ along, strength }) => {
      const growth = grown(part.grows ?? 0, canvas);
      if (course.stands && !part.of.every((term) => 'hertz' in term)) return;
      for (let index = 0; index < samples.length; index++) {
        const frequency = along.frequency(index);
        if (!(frequency > 0) || frequency > highest) continue;
        const amplitude = peak * growth(index) * strength(index) * (2 * Math.PI * frequency) ** order;
        samples[index]! += amplitude * Math.cos(2 * Math.PI * along.cycles(index) + phase + (order * Math.PI) / 2);
      }
    },
  );
}

/** The product of some modulations along the record. */
export function modulated(
  modulations: readonly Modulation[],
  { course, random }: Canvas,
): Answer<(index: number) => number> {
  const each = modulations.map(({ of, depth, phase }) => {
    const angle = phase ?? 2 * Math.PI * random.uniform();
    return fromAll(
      { along: course.follow(of) },
      ({ along }) =>
        (index: number) =>
          1 + depth * Math.cos(2 * Math.PI * along.cycles(index) + angle),
    );
  });
  return fromAll(Object.fromEntries(each.entries()), (known) => {
    const all = Object.values(known);
    return (index: number) => all.reduce((product, one) => product * one(index), 1);
  });
}

/** (speed / highest speed of the record)^power. */
export function grown(power: number, { course, fastest }: Canvas): (index: number) => number {
  if (power === 0 || !(fastest > 0)) return () => 1;
  return (index) => (course.turns.frequency(index) / fastest) ** power;
}

/** Whether anything of a part moves with the speed. */
export function moves(part: TonePart): boolean {
  return !part.of.every(keepsStill);
}

export type { FrequencyCourse };
