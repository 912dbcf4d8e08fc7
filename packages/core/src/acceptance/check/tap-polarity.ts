import { said } from '../../finding/measure.ts';
import { fromAll, unanswered } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { chainOf } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { pushes } from '../occasion/taps.ts';
import { cannotTell, checkKind, fails, type Judged, meets, wants } from './check-kind.ts';
import { placeOf } from './tap-place.ts';

/** Taps that must agree, and how many of them at least. */
const agreeing = 0.8;
const fewest = 3;

/** Whether a push in the positive direction begins with a positive half wave. */
export const tapPolarity = checkKind({
  kind: 'tap-polarity',
  title: 'Polarity by taps',
  question: 'Does a push the positive way begin positively, so that phases can be compared?',
  on: ['taps'],
  // A push on a casing moves the surface that an accelerometer or a velocity transducer stands on.
  applies: (designed) => chainOf(designed)?.transducer.reference === 'casing',
  sources: [clause(tradePractice, 'a push along the positive direction begins with a positive half wave')],
  judge: ({ record }): readonly Judged[] => {
    if (placeOf(record) !== record.at || record.occasion.kind !== 'taps') return [];
    const { push } = record.occasion.sheet.values;
    const known = fromAll(
      {
        taps: record.measures.taps,
        scale: voltsPerNumber(record),
        push: push.known
          ? ({ known: true, value: push.value } as const)
          : unanswered([{ of: record.recording, what: 'side from which it was tapped' }]),
      },
      (each) => each,
    );
    if (!known.known) return wants(known.missing);
    const { taps, scale } = known.value;
    const expected = known.value.push === pushes[0] ? 'positive' : 'negative';
    const signs = taps.taps.map(({ polarity }) => ((polarity === 'positive') === scale > 0 ? 'positive' : 'negative'));
    const facts = {
      expected: `first half wave ${expected}`,
      tolerance: said`${100 * agreeing} % of at least ${fewest} taps`,
      because: said`The taps pushed ${known.value.push}.`,
    };
    const same = signs.filter((each) => each === expected).length;
    const found = said`${expected} in ${same} of ${signs.length} taps`;
    if (signs.length < fewest || (same < agreeing * signs.length && same > (1 - agreeing) * signs.length)) {
      return [
        cannotTell({ ...facts, found, because: 'Too few taps, or they do not agree.' }, [
          'five taps, single ones, straight along the axis of the transducer',
        ]),
      ];
    }
    if (same >= agreeing * signs.length) return [meets({ ...facts, found })];
    return [
      fails({ ...facts, found }, [
        { cause: 'the cores are exchanged', evidence: found, next: 'Follow polarity from terminal to terminal.' },
        {
          cause: 'the transducer stands the other way round than drawn, or it was tapped from the other side',
          evidence: found,
          next: 'Compare the arrow on the transducer with the sheet, and tap again.',
        },
        { cause: 'the recorder inverts the channel', evidence: found, next: 'Read the channel settings.' },
      ]),
    ];
  },
});
