import { finding } from '../../finding/finding.ts';
import { measuredLevel } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { exampleCase, rms } from './example.ts';
import { alarmRule, rowCalled } from './rule.ts';

const sources = [clause(tradePractice, 'order of set points')];

export const alertBelowTrip = alarmRule({
  rule: 'alarm/alert-below-trip',
  title: 'The alert lies below the trip',
  prose:
    'An alert is there so that somebody can act before the machine is stopped; at or above the trip it never comes first.',
  sources,
  findings: (subject) => {
    const [alert, trip] = [rowCalled(subject, 'alert')?.level, rowCalled(subject, 'trip')?.level];
    if (!alert?.known || !trip?.known) return [];
    // Unlike levels cannot be put in order; the rule on the output speaks of them.
    if (alert.value.quantity !== trip.value.quantity || alert.value.detector !== trip.value.detector) return [];
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
        remedy: ['check that the two were not exchanged', 'lower the alert', 'judge the machine: its baseline is high'],
        sources,
      }),
    ];
  },
  passes: exampleCase(),
  fails: exampleCase({ alert: rms(9), trip: rms(9) }),
});
