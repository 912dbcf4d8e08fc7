import { type Answer, answer, fromAll } from '../../quantity/index.ts';
import type { Canvas, MarkPart } from './part.ts';

/** A mark that passes a probe: depth · e^(−½((turn − place)/width)²), by the angle alone, whatever the speed. */
export function writeMark(part: MarkPart, { samples, motion, course, random }: Canvas): Answer<void> {
  // A mark is a matter of the surface: nothing moves, so nothing of it reaches a transducer on the casing.
  if (motion !== 'displacement' || course.stands) return answer(undefined);
  const place = random.uniform();
  return fromAll({ along: course.follow(part.of) }, ({ along }) => {
    for (let index = 0; index < samples.length; index++) {
      const turn = along.cycles(index) - place;
      const off = (turn - Math.round(turn)) / part.width;
      if (Math.abs(off) < 6) samples[index]! -= part.level.value * Math.exp(-0.5 * off * off);
    }
  });
}
