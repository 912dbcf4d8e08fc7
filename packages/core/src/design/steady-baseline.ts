import type { EventPart } from '../alarm/event/event-reading.ts';
import { growthCurve } from '../alarm/event/growth.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Target } from '../demand/target.ts';
import { measured, measuredLevel, type Said, said } from '../finding/measure.ts';
import { level, type Motion } from '../quantity/index.ts';
import type { AlarmStatement } from './plant.ts';

/** The motion of a machine that is well, which goes on while a fault grows; and whether it is counted, and why. */
export interface SteadyBaseline {
  readonly part?: EventPart;
  readonly because: Said;
}

/**
 * The baseline as a part of one size beside what grows. The reading really holds both, so it is counted, and alarms act
 * earlier than on the fault alone. It is left out where what grows is an overall value, which holds it already, and
 * where its size or its frequency is not known: then no alarm acts later than is told.
 */
export function steadyBaseline(point: MeasuringPoint, stated: AlarmStatement, grows: Target): SteadyBaseline {
  if (grows.observable.kind === 'overall') {
    return { because: `The baseline is not added: '${grows.name}' is all the motion there is, and holds it.` };
  }
  if (!stated.baseline.known) {
    return { because: 'The baseline is unknown and not added; with it alarms act on these days or before.' };
  }
  const baseline = stated.baseline.value;
  const place = placeOf(point, baseline.quantity);
  if (place === undefined || !(baseline.value > 0)) {
    return {
      because: said`The baseline, ${measuredLevel(baseline)}, is not added: nothing tells its frequency. With it alarms act on these days or before.`,
    };
  }
  const { frequency, name } = place;
  const meets =
    grows.largestAt.known && Math.abs(grows.largestAt.value / frequency - 1) < sameLine
      ? ' Both stand at one frequency: by their phase they may add to more or to less than this.'
      : '';
  return {
    part: {
      name: 'baseline',
      frequency,
      growth: growthCurve([{ day: 0, level: level(baseline.quantity, baseline.value, baseline.detector) }]),
    },
    because: said`The baseline, ${measuredLevel(baseline)}, is added as a steady part, since a reading holds both: for an rms by energy, for a peak as peaks that meet. It is taken to lie at ${measured('frequency', frequency)}, where '${name}' is largest.${meets}`,
  };
}

/** Frequencies nearer than this, as a share, are taken as one line. */
const sameLine = 0.01;

/** Where most of the motion of a point lies: as its overall value says, else as its largest target of that motion. */
function placeOf(
  point: MeasuringPoint,
  motion: Motion,
): { readonly frequency: number; readonly name: string } | undefined {
  const placed = point.targets.flatMap(({ name, largest, largestAt, observable }) =>
    largest.known && largest.value.quantity === motion && largestAt.known && largestAt.value > 0
      ? [{ name, frequency: largestAt.value, size: largest.value.value, overall: observable.kind === 'overall' }]
      : [],
  );
  const overall = placed.filter((each) => each.overall);
  return (overall.length > 0 ? overall : placed).reduce(
    (most, each) => (most === undefined || each.size > most.size ? each : most),
    undefined as (typeof placed)[number] | undefined,
  );
}
