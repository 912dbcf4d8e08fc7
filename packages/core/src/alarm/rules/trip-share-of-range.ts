import { finding } from '../../finding/finding.ts';
import { measured } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { exampleCase, rms } from './example.ts';
import { alarmRule, rowsThat } from './rule.ts';

/** Where a trip belongs in the range of its loop: above the zero error, below the saturation. */
const share = { low: 0.3, high: 0.8 } as const;
const sources = [clause(tradePractice, 'trip at 30 to 80 % of the range', 'from memory')];

export const tripShareOfRange = alarmRule({
  rule: 'alarm/trip-share-of-range',
  title: 'The trip lies at 30 to 80 % of the range',
  prose:
    'Zero error is a share of the range: low in the range it is a large part of the set point. High in the range the machine has no room left to be seen above its trip.',
  sources,
  findings: (subject) =>
    rowsThat('trip', subject).flatMap(({ share: trip }) => {
      // A part in 1e9 of slack: the limits are decimals, the share is computed.
      if (!trip?.known || (trip.value >= share.low - 1e-9 && trip.value <= share.high + 1e-9)) return [];
      const low = trip.value < share.low;
      return [
        finding({
          rule: 'alarm/trip-share-of-range',
          weight: 'warns',
          at: subject.at,
          found: measured('fraction', trip.value),
          limit: `${share.low * 100} to ${share.high * 100} % of the range`,
          because: low
            ? 'So low in the range the zero error of the loop is a large part of the set point.'
            : 'So high in the range little is seen above the trip.',
          remedy: [low ? 'a transmitter of a narrower range' : 'a transmitter of a wider range'],
          sources,
        }),
      ];
    }),
  passes: exampleCase({ trip: rms(8.5) }),
  fails: exampleCase({ trip: rms(7) }),
});
