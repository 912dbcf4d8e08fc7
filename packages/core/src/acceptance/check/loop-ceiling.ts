import { fullScale } from '../../chain/formulas/loop-state.ts';
import { failureCurrent } from '../../chain/loop-load.ts';
import { measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import type { ValuesHistogram } from '../../signal/measures/values-histogram.ts';
import { loopPractice } from '../../source/loop-practice.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { predictionOf } from '../expected.ts';
import { amperesPerNumber } from '../measured-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, wants } from './check-kind.ts';

/** A flat top: this share of the samples within a hundredth of the span below the greatest value, and at rest there. */
const flat = { share: 0.02, rests: 3, longest: 5 } as const;
/** A current that moves by less than this shows no ceiling, in amperes. */
const leastSpan = 0.001;

/** Whether a running loop comes up to 20 mA, or stops short of it for want of voltage. */
export const loopCeiling = checkKind({
  kind: 'loop-ceiling',
  title: 'Ceiling of the loop',
  question: 'Has the loop voltage enough for its full current?',
  on: ['running'],
  applies: (designed) => predictionOf(designed)?.loop !== undefined,
  sources: [
    clause(loopPractice, 'load resistance'),
    clause(tradePractice, 'a current that stops again and again at one value below 20 mA'),
  ],
  judge: ({ designed, record }): readonly Judged[] => {
    const loop = predictionOf(designed)!.loop!;
    const known = fromAll({ values: record.measures.values, scale: amperesPerNumber(record) }, (each) => each);
    if (!known.known) return wants(known.missing);
    const { values, scale } = known.value;
    const [greatest, moved] = [values.greatest * scale, (values.greatest - values.least) * scale];
    const spare = loop.spare.known
      ? said`${measured('voltage', loop.spare.value)} left over at ${measured('current', failureCurrent)}`
      : undefined;
    const facts = {
      expected: said`no top below ${measured('current', fullScale)}`,
      tolerance: 'none',
      found: said`a greatest current of ${measured('current', greatest, 4)}`,
      because: said`A loop short of voltage reads too little just when it matters${spare === undefined ? '' : said`; as designed ${spare}`}.`,
    };
    if (greatest >= fullScale - 1e-6)
      return [meets({ ...facts, found: said`it comes up to ${measured('current', greatest, 4)}` })];
    if (isFlat(values) && moved >= leastSpan) {
      const found = said`flat at ${measured('current', greatest, 4)}, ${values.highRail.rests} times`;
      return [
        fails({ ...facts, found }, [
          {
            cause: 'too much resistance in the loop, or too low a supply',
            evidence: found,
            next: 'Measure the voltage across the sensor while a source asks for 20 mA, and the supply under load.',
          },
          {
            cause: 'a second indicator, barrier or splitter in the loop that the design does not know',
            evidence: found,
            next: 'Follow the loop from terminal to terminal.',
          },
          {
            cause: 'the sensor limits its own output, or holds a peak',
            evidence: found,
            next: 'Feed the loop from a source instead of the sensor.',
          },
        ]),
      ];
    }
    return [
      cannotTell(
        { ...facts, because: said`The record never asks for more than ${measured('current', greatest, 4)}.` },
        ['a loop source that feeds 20 mA and 21 mA in place of the sensor'],
      ),
    ];
  },
});

function isFlat({ shareNearGreatest, shareNearLeast, highRail }: ValuesHistogram): boolean {
  return (
    shareNearGreatest >= flat.share &&
    // A current that only steps between two values rests at both.
    shareNearGreatest + shareNearLeast < 0.8 &&
    (highRail.rests >= flat.rests || shareNearGreatest > 0.1) &&
    highRail.longestRest >= flat.longest
  );
}
