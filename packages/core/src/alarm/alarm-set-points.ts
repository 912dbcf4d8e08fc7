import { comparable, type Level, levelField, type Motion, motions } from '../quantity/index.ts';
import { optional } from '../quantity/stated.ts';
import { optionalOutput, output, working } from '../working/index.ts';
import { quarterAboveBaseline } from './policies/quarter-above-baseline.ts';
import { setPoints } from './set-points.ts';

const amplitude = (meaning: string, symbol: string, example: string) =>
  levelField(motions, meaning, { symbol, example });
const policy = quarterAboveBaseline;

export const alarmSetPoints = working({
  name: 'alarm-set-points',
  title: 'Alert and trip from the baseline and the zone boundaries',
  inputs: {
    baseline: optional(
      amplitude('Level of this machine, healthy; left out: the alert stays unknown', 'x_0', '1.9 mm/s rms'),
    ),
    bC: amplitude('Boundary between zones B and C', 'BC', '5.1 mm/s rms'),
    cD: amplitude('Boundary between zones C and D', 'CD', '8.5 mm/s rms'),
  },
  outputs: {
    alertCap: output(amplitude('Most the alert may be', 'cap_a', '6.375 mm/s rms'), `cap_a = ${policy.alertCap} · BC`),
    alert: optionalOutput(
      amplitude('Alert', 'alert', '3.175 mm/s rms'),
      `alert = min(x_0 + ${policy.alertMargin} · BC, cap_a)`,
    ),
    tripCap: output(amplitude('Most the trip may be', 'cap_t', '10.625 mm/s rms'), `cap_t = ${policy.tripCap} · CD`),
    trip: output(amplitude('Trip', 'trip', '8.5 mm/s rms'), 'trip = min(CD, cap_t)'),
  },
  holds:
    'one machine, one point, one speed and load: a baseline of another machine or speed is none. The rule is known second-hand; that the trip lies in zone C or D is from memory.',
  sources: policy.sources,
  evaluate: ({ baseline, bC, cD }) => {
    comparable(bC, cD);
    if (baseline !== undefined) comparable({ ...baseline, ...bandOf(baseline, bC) }, bC);
    const points = pointsOf(baseline, bC, cD);
    const known = (name: 'alertCap' | 'trip' | 'tripCap') => motionOf(points[name]) as Level<Motion>;
    return {
      alertCap: known('alertCap'),
      alert: motionOf(points.alert),
      tripCap: known('tripCap'),
      trip: known('trip'),
    };
  },
  doubts: ({ baseline, bC, cD }) => pointsOf(baseline, bC, cD).findings,
  example: { baseline: '1.9 mm/s rms', 'b-c': '5.1 mm/s rms', 'c-d': '8.5 mm/s rms' },
});

/** A baseline that states no band is taken as one of the band of the boundary; a finding says so. */
function bandOf(baseline: Level, like: Level) {
  return baseline.band === undefined && like.band !== undefined ? { band: like.band } : {};
}

function pointsOf(baseline: Level | undefined, bc: Level, cd: Level) {
  return setPoints({ at: 'alarm-set-points', baseline: baseline ?? { known: false }, boundaries: { bc, cd }, policy });
}

function motionOf(found: ReturnType<typeof setPoints>['alert']): Level<Motion> | undefined {
  return found.known ? (found.value as Level<Motion>) : undefined;
}
