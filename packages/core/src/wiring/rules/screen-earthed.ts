import { type Finding, finding, type Weight } from '../../finding/finding.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { nodeOf } from '../drawing.ts';
import { earthedNodes } from '../graph.ts';
import { wiringRule } from './rule.ts';

const id = 'wiring/screen-earthed';
const sources = [clause(tradePractice, 'screen at one end (cabinet)')];

export const screenEarthed = wiringRule({
  id,
  title: 'Every piece of screen is earthed somewhere',
  prose:
    'A screen that floats screens nothing: it hands on what it catches. Cut at a junction box, the piece on the side of the ' +
    'transducer is easily left without earth, and nobody sees it.',
  remedy: ['carry the screen through the box to the cabinet', 'earth the piece at one end'],
  sources,
  findings: ({ points, graph }) => {
    const nodes = new Set(graph.nodes.map(({ id: name }) => name));
    const earthed = earthedNodes(graph);
    return points.flatMap(({ point, wiring }): readonly Finding[] => {
      if (wiring === undefined) return [];
      const say = (weight: Weight, found: string, asks?: string) =>
        finding({
          rule: id,
          weight,
          at: point.of,
          found,
          limit: 'each piece earthed at one end',
          because: 'A screen without earth couples what it catches into the cores inside it.',
          remedy: ['carry the screen through to the earth of the cabinet', 'earth this piece at one end'],
          sources,
          ...(asks === undefined ? {} : { asks }),
        });
      if (wiring.values.screenEarthed?.known === false) {
        return [say('question', 'where the screen is earthed is not known', 'At which end is the screen earthed?')];
      }
      if (point.installation === 'portable') return [];
      return [nodeOf.screen(point.of), nodeOf.farScreen(point.of)]
        .filter((piece) => nodes.has(piece) && !earthed.has(piece))
        .map((piece) => say('warns', `${piece} floats`));
    });
  },
});
