import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { type Answer, fromAll, unanswered } from '../../quantity/index.ts';
import { type DecayOfTaps, decayAfter, decayOfTaps } from '../../signal/measures/decay.ts';
import { iso5348 } from '../../source/iso-5348.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { resonanceOf } from '../expected.ts';
import type { MeasuredRecord } from '../measured-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, type RivalCause, wants } from './check-kind.ts';

/** Where the found resonance may lie, over the predicted one. */
const allowed = { low: 0.75, high: 1.4 } as const;
/** A resonance is looked for from this share of the predicted one on: a loose mount lowers it to a third. */
const search = { low: 0.2, high: 1.6 } as const;
/** Share of what follows a tap that one decaying sine explains, from which on it is a mode. */
const oneMode = 0.5;

/** The mounted resonance that taps excite, against the prediction of transducer and mount. */
export const resonance = checkKind({
  kind: 'resonance',
  title: 'Mounted resonance by taps',
  question: 'Is the transducer as firmly on the surface as designed?',
  on: ['taps'],
  applies: (designed) => resonanceOf(designed) !== undefined,
  sources: [
    clause(iso5348, 'mounted resonance tells the quality of a mount', 'second-hand'),
    clause(tradePractice, 'three quarters to 1.4 times the prediction; a loose mount at a third'),
  ],
  judge: ({ designed, record }): readonly Judged[] => {
    const known = fromAll({ rate: record.measures.rate, predicted: resonanceOf(designed)! }, (each) => each);
    if (!known.known) return wants(known.missing);
    const { rate, predicted } = known.value;
    const facts = {
      expected: measured('frequency', predicted),
      tolerance: said`${measuredSpan('frequency', { low: allowed.low * predicted, high: allowed.high * predicted })}: the stiffness of a mount is known no better`,
      because: 'A lower resonance than designed is a softer mount: paint, a gap, a loose stud.',
    };
    const needed = 2.56 * predicted;
    if (rate < needed) {
      // A resonance so low that even this record shows it is a loose mount all the same.
      const low = decayFound(record, predicted, Math.min(0.39 * rate, allowed.low * predicted));
      if (!low.known || low.value.damping > 0.05 || 0.39 * rate < 0.3 * predicted) {
        return [
          cannotTell(
            {
              ...facts,
              because: said`At ${measured('frequency', rate)} a resonance at ${measured('frequency', predicted)} is out of sight.`,
            },
            [said`taps recorded at ${measured('frequency', needed)} or more, without a low-pass below it`],
          ),
        ];
      }
    }
    const found = decayFound(record, predicted);
    if (!found.known) {
      return [
        cannotTell({ ...facts, because: said`Not told: ${found.missing.map(({ what }) => what).join(', ')}.` }, [
          'three or more taps with a small hard tip, a second apart, the machine stopped',
        ]),
      ];
    }
    const { frequency, frequencyInterval, taps } = found.value;
    const shown = {
      ...facts,
      found: said`${measured('frequency', frequency)} by ${taps} taps`,
      interval: measuredSpan('frequency', { low: frequencyInterval[0], high: frequencyInterval[1] }),
    };
    const ratio = frequency / predicted;
    if (ratio >= allowed.low && ratio <= allowed.high) return [meets(shown)];
    return [fails(shown, ratio < 1 ? soft(ratio) : stiff(ratio))];
  },
});

/**
 * What rings after the taps of a record, up to a frequency: first where it is expected, then anywhere that a loose mount
 * may have brought it. Only what one decaying mode explains is a ring-down; the rest is push and noise.
 */
export function decayFound(
  { measures }: MeasuredRecord,
  predicted: number,
  most = Number.POSITIVE_INFINITY,
): Answer<DecayOfTaps> {
  const known = fromAll({ rate: measures.rate, taps: measures.taps }, (each) => each);
  if (!known.known) return known;
  const { rate, taps } = known.value;
  const high = Math.min(search.high * predicted, 0.45 * rate, most);
  const within = (from: number, to: number) =>
    decayOfTaps(
      taps.taps.flatMap((tap) => {
        const decay = decayAfter(tap, rate, from, to);
        return decay.known && decay.value.explained >= oneMode ? [decay.value] : [];
      }),
    );
  const expected = Math.min(allowed.high * predicted, high);
  const there = expected > allowed.low * predicted ? within(allowed.low * predicted, expected) : undefined;
  if (there?.known === true) return there;
  if (!(high > search.low * predicted)) return unanswered([{ of: 'the record', what: 'a sampling rate above it' }]);
  return within(search.low * predicted, high);
}

function soft(ratio: number): readonly RivalCause[] {
  const evidence = said`the resonance lies at ${ratio.toPrecision(2)} times the predicted one`;
  return [
    {
      cause: 'loose: the stud, the mount or the transducer is not tight',
      evidence,
      next: 'Tighten to the stated torque and tap again.',
    },
    {
      cause: 'paint, dirt or a curved face under the mount',
      evidence,
      next: 'Unscrew, look at the witness mark, spot-face and grease.',
    },
    {
      cause: 'the mode of a bracket or cover under it, not of the transducer',
      evidence,
      next: 'Tap with the transducer on the bare housing beside it.',
    },
    { cause: 'another mount than designed', evidence, next: 'Compare with the installation instruction.' },
  ];
}

function stiff(ratio: number): readonly RivalCause[] {
  const evidence = said`the resonance lies at ${ratio.toPrecision(2)} times the predicted one`;
  return [
    {
      cause: 'another, lighter transducer than designed',
      evidence,
      next: 'Read the label against the instrument list.',
    },
    {
      cause: 'the stiffness of the mount was taken too low',
      evidence,
      next: 'Hand the measured value back to the design.',
    },
  ];
}
