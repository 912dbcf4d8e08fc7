import { finding } from '../../finding/finding.ts';
import { measuredLevel } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { exampleCase, rms } from './example.ts';
import { type AlarmCase, alarmRule, rowsThat } from './rule.ts';

/** Every alert beside every trip. */
function pairs(subject: AlarmCase) {
  const trips = rowsThat('trip', subject);
  return rowsThat('alert', subject).flatMap((alert) => trips.map((trip) => [alert.level, trip.level] as const));
}

const sources = [clause(tradePractice, 'order of set points')];

export const alertBelowTrip = alarmRule({
  rule: 'alarm/alert-below-trip',
  title: 'The alert lies below the trip',
  prose:
    'An alert is there so that somebody can act before the machine is stopped; at or above the trip it never comes first.',
  sources,
  findings: (subject) =>
    pairs(subject).flatMap(([alert, trip]) => {
      if (!alert.known || !trip.known) return [];
      // Unlike levels cannot be put in order; the rule on the output speaks of them.
      if (alert.value.quantity !== trip.value.quantity || alert.value.detector !== trip.value.detector) return [];
      // Two bands are two things: a set point of a narrow band may lie below the alert of the whole.
      if (alert.value.band?.low !== trip.value.band?.low || alert.value.band?.high !== trip.value.band?.high) return [];
      if (alert.value.value < trip.value.value) return [];
      return [
        finding({
          rule: 'alarm/alert-below-trip',
          weight: 'blocks-issue',
          at: subject.at,
          found: measuredLevel(alert.value),
          limit: measuredLevel(trip.value),
          because:
            'The alert is not below the trip: the machine would be stopped before anybody is told that something is wrong.',
          remedy: [
            'check that the two were not exchanged',
            'lower the alert',
            'judge the machine: its baseline is high',
          ],
          sources,
        }),
      ];
    }),
  passes: exampleCase(),
  fails: exampleCase({ alert: rms(9), trip: rms(9) }),
});
