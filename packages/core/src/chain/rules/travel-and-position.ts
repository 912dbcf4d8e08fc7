import type { MeasuringPoint } from '../../demand/measuring-point.ts';
import { sees, type Target } from '../../demand/target.ts';
import { measured, said } from '../../finding/measure.ts';
import { type Answer, answer, answerOf, asMotion, asSineDetector, fromAll, thenAnswer } from '../../quantity/index.ts';
import { api670, screeningRules } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

/** Beyond this the margin says no more than 'plenty'. */
const largestMargin = 60;

export const travelAndPosition = rule({
  id: 'chain/travel-and-position',
  title: 'Travel and position together stay inside the linear range',
  prose:
    'What is measured from rest moves about a place that moves too: with load, heat, wear, the lift of the shaft in its ' +
    'bearing. Both together must stay inside the linear range, on the nearer side of where the gap was set.',
  remedy: ['a transducer with a longer linear range', 'set the gap for the hot, running position', 'a stiffer bracket'],
  sources: [clause(screeningRules, 'rule 5'), clause(api670, 'linear range')],
  judge: ({ point, prediction }) => {
    const { linearTravel, reference } = prediction.chain.transducer;
    const seen = point.targets.filter((target) => sees(reference, target.reference));
    if (linearTravel === undefined || seen.length === 0) return [];
    return judged(
      fromAll({ linear: linearTravel, travel: travelPeak(seen), rest: restPosition(point, seen) }, (known) => known),
      { rule: 'chain/travel-and-position', what: 'travel and position' },
      ({ linear: { room }, travel, rest }): readonly Judgement[] => {
        const used = travel + rest.peak;
        // Nothing is said to move or to stray, so there is nothing to compare.
        if (used === 0) return [];
        const inside = used <= room;
        return [
          {
            rule: 'chain/travel-and-position',
            outcome: inside ? 'meets' : 'fails',
            what:
              travel === 0
                ? said`position${rest.words}`
                : said`travel of ${measured('length', 2 * travel)} and position of ${measured('length', 2 * rest.peak)}${rest.words}, together`,
            found: measured('length', 2 * used),
            limit: measured('length', 2 * room),
            margin: marginOf(room, used),
            ...(inside ? {} : { needs: said`a linear range of at least ${measured('length', 2 * used)}` }),
          },
        ];
      },
    );
  },
});

/** Room over what is used, in decibels, kept within what a reader can use. */
function marginOf(room: number, used: number): number {
  return room > 0 ? Math.max(-largestMargin, Math.min(largestMargin, 20 * Math.log10(room / used))) : -largestMargin;
}

/** Sum of the largest peaks of what moves, as if they met in phase. */
function travelPeak(seen: readonly Target[]): Answer<number> {
  const moving = seen.filter((target) => target.within === undefined && !target.observable.atRest);
  return moving.reduce<Answer<number>>(
    (total, target) =>
      fromAll(
        { total, largest: target.largest, at: target.largestAt },
        (known) => known.total + asMotion(asSineDetector(known.largest, 'peak'), 'displacement', known.at).value,
      ),
    answer(0),
  );
}

interface RestPosition {
  readonly peak: number;
  readonly words: string;
}

/** As stated for the point; else what a position to be measured may reach; else none, and it says so. */
function restPosition(point: MeasuringPoint, seen: readonly Target[]): Answer<RestPosition> {
  const stated = point.surroundings.values.restTravel;
  if (stated !== undefined) {
    return fromAll({ peak: answerOf(stated, point.of, 'rest travel') }, ({ peak }) => ({ peak, words: '' }));
  }
  const position = seen.find((target) => target.observable.atRest);
  if (position === undefined) return answer({ peak: 0, words: ' (none stated)' });
  return thenAnswer(position.largest, (largest) => answer({ peak: asSineDetector(largest, 'peak').value, words: '' }));
}
