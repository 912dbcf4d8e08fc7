import { iso10816x3edition2009 } from '../source/iso-10816-3-2009.ts';
import { iso10816x7edition2009 } from '../source/iso-10816-7-2009.ts';
import { screeningRules } from '../source/screening-rules.ts';
import { type Clause, clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { type Printed, printed } from '../working/printed.ts';
import { alarmSetPoints } from './alarm-set-points.ts';
import { responseTimeWorking } from './logic/response-time.ts';
import { motionWindowWorking } from './motion-window.ts';

const rms = (value: string) => `${value} mm/s rms`;

function worked(
  [baseline, bc, cd]: readonly [baseline: string, bc: string, cd: string],
  results: Readonly<Record<string, string>>,
  source: Clause,
): Printed {
  return printed({
    working: alarmSetPoints,
    given: { baseline: rms(baseline), 'b-c': rms(bc), 'c-d': rms(cd) },
    printed: Object.fromEntries(Object.entries(results).map(([name, value]) => [name, rms(value)])),
    source,
  });
}

const groups = clause(iso10816x3edition2009, '5.4.1, worked cases', 'computed here');
const pumps = clause(iso10816x7edition2009, 'largest alarm and trip', 'from memory');

/** Boundaries and largest set points of the pump edition, four classes of pumps, as remembered of its table. */
const pumpCaps = (
  [
    ['4.0', '6.6', '5.0', '8.3'],
    ['5.0', '7.6', '6.3', '9.5'],
    ['5.1', '8.5', '6.4', '10.6'],
    ['6.1', '9.5', '7.6', '11.9'],
  ] as const
).map(([bc, cd, alert, trip]) => worked(['1.0', bc, cd], { 'alert-cap': alert, 'trip-cap': trip }, pumps));

export const alarmEvidence: readonly Printed[] = [
  worked(['1.0', '2.8', '4.5'], { alert: '1.7', 'trip-cap': '5.625' }, groups),
  worked(['3.2', '2.8', '4.5'], { alert: '3.5', 'trip-cap': '5.625' }, groups),
  worked(['1.2', '4.5', '7.1'], { alert: '2.325', 'trip-cap': '8.875' }, groups),
  worked(['5.0', '7.1', '11.0'], { alert: '6.775', 'trip-cap': '13.75' }, groups),
  ...pumpCaps,
  worked(
    ['1.9', '5.1', '8.5'],
    { alert: '3.175', 'alert-cap': '6.375', trip: '8.5', 'trip-cap': '10.625' },
    clause(screeningRules, 'plant 1, set points'),
  ),
  worked(
    ['3.4', '8', '12'],
    { alert: '5.4', 'alert-cap': '10.0', trip: '12', 'trip-cap': '15.0' },
    clause(screeningRules, 'plant 5, frame of the compressor'),
  ),
  printed({
    working: motionWindowWorking,
    given: { wanted: '9 mm pp', within: '0.5 mm', trip: '10.5 mm pp', frequency: '920 r/min' },
    printed: {
      'acceleration-low': '4.023 g peak',
      'acceleration-high': '4.496 g peak',
      'acceleration-trip': '4.969 g peak',
    },
    source: clause(screeningRules, 'plant 4, stroke of the screen'),
  }),
  // By hand: the waits one after the other; ten turns at 12 r/min, a turn in 5 s; what is left of the allowed time.
  printed({
    working: responseTimeWorking,
    given: {
      detector: '0.5 s',
      filter: '0.05 s',
      scan: '0.1 s',
      delay: '50 s',
      'final-element': '0.6 s',
      slowest: '12 r/min',
      allowed: '60 s',
    },
    printed: { total: '51.25 s', 'least-delay': '50.0 s', spare: '8.75 s' },
    source: clause(tradePractice, 'waits one after the other, by hand', 'computed here'),
  }),
];
