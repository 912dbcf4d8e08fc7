import { type Finding, finding } from '../../finding/finding.ts';
import { measured, said } from '../../finding/measure.ts';
import { answerOf, fromAll } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { leastDistance } from '../separation.ts';
import { wiringRule } from './rule.ts';

const id = 'wiring/separation';
const sources = [clause(tradePractice, 'distance from power cables')];

export const separation = wiringRule({
  id,
  title: 'A signal cable keeps its distance from power',
  prose:
    'Along a power cable every metre couples. How far is far enough depends on current, screens and trays; the distances ' +
    'here are practice without a source, and those of the owner take their place.',
  remedy: ['another tray', 'a steel conduit or a covered tray of its own', 'cross power cables at a right angle'],
  sources,
  findings: ({ points, separation: own }) =>
    points.flatMap(({ point, wiring }): readonly Finding[] => {
      const stated = wiring?.values.powerCable;
      if (wiring === undefined || stated === undefined) return [];
      if (!stated.known) return [asked(point.of, 'what runs along the cable', 'Which power cables run along?')];
      if (stated.value === 'none') return [];
      const { distance, from } = leastDistance(stated.value, own);
      const both = fromAll(
        { least: distance, is: answerOf<number>(wiring.values.powerDistance, point.of, 'power distance') },
        (known) => known,
      );
      if (!both.known) {
        const names = both.missing.map((each) => each.what).join(' and ');
        return [asked(point.of, `${names} not known`, `How far is the nearest ${stated.value} cable?`)];
      }
      const { least, is } = both.value;
      if (is >= least) return [];
      return [
        finding({
          rule: id,
          weight: 'warns',
          at: point.of,
          found: measured('length', is),
          limit: said`${measured('length', least)} from a ${stated.value} cable (${from})`,
          because: `A ${stated.value} cable so near couples hum and its harmonics into the signal cable.`,
          remedy: ['another tray', 'a steel conduit or a covered tray of its own'],
          sources,
        }),
      ];
    }),
});

function asked(at: string, found: string, asks: string): Finding {
  return finding({
    rule: id,
    weight: 'question',
    at,
    found,
    limit: 'the distance from power cables',
    because: 'Without it nobody can tell what couples in.',
    remedy: ['walk the route, and measure at its nearest'],
    sources,
    asks,
  });
}
