import { type Answer, answer, unanswered, valueIfStated } from '../quantity/index.ts';
import { measured } from '../signal/measures/gathering.ts';
import { toneNear } from '../signal/measures/tone.ts';
import { pulseThreshold, turnPulses } from '../signal/measures/turns.ts';
import type { MeasuredRecord, ServingChannel } from './measured-record.ts';

/** Speed as somebody wrote it down for a running machine: on the occasion, or as the recording says. */
export function declaredSpeed(record: MeasuredRecord): Answer<number> {
  const { occasion, statement } = record;
  const own =
    occasion.kind === 'running' || occasion.kind === 'slow-roll'
      ? (valueIfStated(occasion.sheet.values.speed) as number | undefined)
      : undefined;
  if (own !== undefined) return answer(own);
  return statement.speed.known ? statement.speed : unanswered([{ of: record.recording, what: 'speed of the shaft' }]);
}

/** Turns a second by the mark of each turn, where such a channel was recorded beside. */
export function speedMarked(serving: readonly ServingChannel[]): number | undefined {
  const channel = serving.find((each) => each.serves === 'once-per-turn');
  if (channel === undefined || !channel.measures.rate.known) return undefined;
  const { excerpt, rate, moments } = channel.measures;
  if (!moments.known) return undefined;
  const { least, greatest } = moments.value;
  // A notch is a narrow dip: the mean lies near the top. A tape is a narrow rise.
  const edge = moments.value.mean > (least + greatest) / 2 ? 'falling' : 'rising';
  const turns = measured(turnPulses({ rate: rate.value, edge, ...pulseThreshold(least, greatest) }), excerpt);
  return turns.known ? turns.value.meanSpeed : undefined;
}

/** The tone nearest to a speed in hertz, within 2 % of it and clear of the noise; nothing where none stands there. */
export function speedNear(samples: Float64Array, rate: number, speed: number): number | undefined {
  const tone = toneNear(samples, rate, speed);
  if (!tone.known || Math.abs(tone.value.frequency / speed - 1) > 0.02) return undefined;
  return tone.value.amplitude > 6 * tone.value.amplitudeError ? tone.value.frequency : undefined;
}
