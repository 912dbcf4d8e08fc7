import { type Finding, finding } from '../../finding/finding.ts';
import { measuredLevel, type Said, said } from '../../finding/measure.ts';
import { answerOf } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { WiredPoint } from '../graph.ts';
import { type GroundLoop, showLoop } from '../ground-loops.ts';
import { humPerMillivolt } from '../hum.ts';
import { wiringRule } from './rule.ts';

const id = 'wiring/one-earth';
const sources = [clause(tradePractice, 'case grounding: one earth point per loop')];
/** Rules of the chain that refuse the loop of one point by itself. */
const refusers = ['chain/case-grounding', 'chain/barrier-earth'];

export const oneEarth = wiringRule({
  id,
  title: 'The return of a signal touches earth once',
  prose:
    'Where the return of a signal touches earth in two places, what the plant lets flow between them adds to the signal: a ' +
    'line at the frequency of the mains that is taken for a motor fault. Two channels that share a common are enough.',
  remedy: ['a case-isolated transducer', 'an isolating stud', 'a galvanic isolator', 'an input that floats'],
  sources,
  findings: ({ loops, points }) =>
    loops
      .filter((loop) => loop.through === 'signal' && !refusedAlready(loop, points))
      .map(
        (loop): Finding =>
          finding({
            rule: id,
            weight: 'blocks-issue',
            at: loop.points[0] ?? 'wiring',
            found: `ground loop: ${showLoop(loop)}`,
            limit: 'one earth',
            because: said`Whatever voltage lies between its earths stands in series with the signal.${eachMillivolt(loop, points)}`,
            remedy: loop.remedy,
            sources,
          }),
      ),
});

/** What a millivolt of it reads as, where the mains and the sensitivity are known. */
function eachMillivolt(loop: GroundLoop, points: readonly WiredPoint[]): Said {
  const first = points.find((each) => each.point.of === loop.points[0]);
  if (first?.wiring?.values.mains === undefined) return '';
  const read = humPerMillivolt(first.chain, answerOf<number>(first.wiring.values.mains, first.point.of, 'mains'));
  return read.known ? said` Each millivolt rms of it reads as ${measuredLevel(read.value)}.` : '';
}

/** A loop of one point that a rule of the chain refuses is not said twice. */
function refusedAlready({ points: passed }: GroundLoop, points: readonly WiredPoint[]): boolean {
  if (passed.length !== 1) return false;
  const judgements = points.find((each) => each.point.of === passed[0])?.judgements ?? [];
  return judgements.some((each) => refusers.includes(each.rule) && each.outcome === 'fails');
}
