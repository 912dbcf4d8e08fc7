import { type Answer, asSineDetector, fromAll, motionOrder } from '../../quantity/index.ts';
import { noiseRecord } from '../noise-record.ts';
import type { Canvas, NoisePart } from './part.ts';
import { modulated } from './tone.ts';

/**
 * Noise of the stated rms in its band: density rms/√(high − low) in the motion of its level, times (2πf)^k in that of the
 * canvas. A level as a peak is taken as four times the rms, which normal noise passes once in 16,000 samples.
 */
export function writeNoise(part: NoisePart, canvas: Canvas): Answer<void> {
  const { samples, motion, course, random } = canvas;
  const order = motionOrder[motion] - motionOrder[part.level.quantity];
  const { low } = part.band;
  const high = Math.min(part.band.high, 0.39 * course.rate);
  const density = rmsOf(part) / Math.sqrt(part.band.high - part.band.low);
  const drawn = noiseRecord(
    samples.length,
    course.rate,
    (frequency) => (frequency < low || frequency > high ? 0 : density * (2 * Math.PI * frequency) ** order),
    random,
  );
  return fromAll({ strength: modulated(part.modulatedBy ?? [], canvas) }, ({ strength }) => {
    for (let index = 0; index < samples.length; index++) samples[index]! += drawn[index]! * strength(index);
  });
}

const peakOverRms = 4;

function rmsOf({ level }: NoisePart): number {
  if (level.detector === 'rms') return level.value;
  if (level.detector === 'derived-peak') return asSineDetector(level, 'rms').value;
  return level.detector === 'peak-to-peak' ? level.value / (2 * peakOverRms) : level.value / peakOverRms;
}
