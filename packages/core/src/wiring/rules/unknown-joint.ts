import { finding } from '../../finding/finding.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { wiringRule } from './rule.ts';

const id = 'wiring/unknown-joint';
const sources = [clause(tradePractice, 'case grounding: one earth point per loop')];

export const unknownJoint = wiringRule({
  id,
  title: 'Whether a joint conducts is known',
  prose:
    'A joint nobody knows is left open in the search, so a loop through it would not be found. It is asked about where ' +
    'the wiring of the point is stated at all.',
  remedy: ['measure it with the cable off: an isolated case reads megohms'],
  sources,
  findings: ({ points, graph }) =>
    graph.unknown
      .filter((each) => points.some(({ point, wiring }) => point.of === each.point && wiring !== undefined))
      .filter((each) => !each.joint.startsWith('screen of'))
      .map((each) =>
        finding({
          rule: id,
          weight: 'question',
          at: each.point,
          found: `not known whether the ${each.joint} conducts`,
          limit: 'known, one way or the other',
          because: 'A ground loop through it would not be found.',
          remedy: ['look it up in the data sheet', 'measure it with the cable off'],
          sources,
          asks: `What is the ${each.missing.map((one) => `${one.what} of ${one.of}`).join(', ')}?`,
        }),
      ),
});
