import { finding } from '../../finding/finding.ts';
import { decibels, measuredLevel } from '../../finding/measure.ts';
import { screeningRules } from '../../source/screening-rules.ts';
import { clause } from '../../source/source.ts';
import { exampleCase, rms } from './example.ts';
import { acting, alarmRule } from './rule.ts';

/** Least distance from the noise floor, in decibels, at which a level is told from noise. */
const least = 10;
const sources = [clause(screeningRules, 'rule 4')];

export const aboveNoise = alarmRule({
  rule: 'alarm/above-noise',
  title: 'A set point lies above the noise floor',
  prose: 'Below the noise floor a set point always stands; close above it, it comes and goes with the noise.',
  sources,
  findings: (subject) => {
    const { noiseFloor } = subject;
    if (noiseFloor === undefined) return [];
    if (!noiseFloor.known) {
      return [
        finding({
          rule: 'alarm/above-noise',
          weight: 'question',
          at: subject.at,
          found: 'the noise floor of the channel is not known',
          limit: 'a set point 10 dB above it',
          because: 'Whether the set points stand clear of the noise depends on it.',
          remedy: noiseFloor.missing.map((each) => `state the ${each.what} of ${each.of}`),
          sources,
          asks: 'What does the channel read on a quiet machine?',
        }),
      ];
    }
    const floor = noiseFloor.value;
    return acting(subject).flatMap(({ row, level: set }) => {
      if (set.quantity !== floor.quantity || set.detector !== floor.detector || floor.value <= 0) return [];
      const margin = 20 * Math.log10(set.value / floor.value);
      if (margin >= least) return [];
      const below = margin <= 0;
      return [
        finding({
          rule: 'alarm/above-noise',
          weight: below ? 'blocks-issue' : 'warns',
          at: subject.at,
          found: measuredLevel(set),
          limit: below ? measuredLevel(floor) : decibels(least),
          because: below
            ? `The ${row.name} lies at or below the noise floor and would always stand.`
            : `The ${row.name} lies ${margin.toFixed(1)} dB above the noise floor and would come and go with it.`,
          remedy: ['a sensor or an input of less noise', 'a band that leaves the noise out'],
          sources,
        }),
      ];
    });
  },
  passes: exampleCase(),
  fails: exampleCase({ alert: rms(0.04) }),
});
