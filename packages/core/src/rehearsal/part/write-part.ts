import type { Answer } from '../../quantity/index.ts';
import { writeImpacts } from './impacts.ts';
import { writeMark } from './mark.ts';
import { writeNoise } from './noise.ts';
import type { Canvas, MotionPart } from './part.ts';
import { writeTone } from './tone.ts';

type Writers = {
  readonly [Is in MotionPart['is']]: (part: Extract<MotionPart, { readonly is: Is }>, canvas: Canvas) => Answer<void>;
};

const writers: Writers = { tone: writeTone, impacts: writeImpacts, mark: writeMark, noise: writeNoise };

/** Adds a part to the samples of the canvas. */
export function writePart(part: MotionPart, canvas: Canvas): Answer<void> {
  // Each part goes to the writer of its own word; the compiler does not see that through the lookup.
  return (writers[part.is] as (part: MotionPart, canvas: Canvas) => Answer<void>)(part, canvas);
}
