import { type Finding, finding } from '../../finding/finding.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { WiredPoint } from '../graph.ts';
import { type GroundLoop, showLoop } from '../ground-loops.ts';
import { wiringRule } from './rule.ts';

const id = 'wiring/screen-ends';
const sources = [clause(tradePractice, 'screen at one end, both only with an equipotential bond and by design')];

export const screenEnds = wiringRule({
  id,
  title: 'A screen is earthed at one end, or at both over a bond',
  prose:
    'A screen earthed twice carries what flows between the earths, along the whole signal cable. Over a bonding conductor ' +
    'laid beside it that is harmless and meant, against radio and converters; without one the screen is the bond.',
  remedy: ['earth it at the cabinet only', 'lay an equipotential bond along, and record that it is meant'],
  sources,
  findings: ({ loops, points }) =>
    loops
      .filter((loop) => loop.through === 'screen' && !loop.byDesign)
      .map((loop) => (bondIsUnknown(loop, points) ? asked(loop) : refused(loop))),
});

function bondIsUnknown(loop: GroundLoop, points: readonly WiredPoint[]): boolean {
  const stated = points.filter((each) => loop.points.includes(each.point.of));
  return stated.some((each) => each.wiring?.values.equipotentialBond?.known === false);
}

function said(loop: GroundLoop): Pick<Finding, 'rule' | 'at' | 'found' | 'limit' | 'because' | 'sources'> {
  return {
    rule: id,
    at: loop.points[0] ?? 'wiring',
    found: `screen earthed more than once: ${showLoop(loop)}`,
    limit: 'one end, or an equipotential bond',
    because: 'What flows between the earths flows along the screen, and couples into every core inside it.',
    sources,
  };
}

function refused(loop: GroundLoop): Finding {
  return finding({
    ...said(loop),
    weight: 'blocks-issue',
    remedy: [...loop.remedy, 'lay an equipotential bond along, and record that it is meant'],
  });
}

function asked(loop: GroundLoop): Finding {
  return finding({
    ...said(loop),
    weight: 'question',
    remedy: loop.remedy,
    asks: 'Does a bonding conductor run from the machine to the cabinet? Ask the electrical engineer.',
  });
}
