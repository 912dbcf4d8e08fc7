import { measured, said } from '../../finding/measure.ts';
import { answer, fromAll } from '../../quantity/index.ts';
import { iepePractice } from '../../source/iepe-practice.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { Course } from '../course.ts';
import { chainOf, lowerCorner } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, wants } from './check-kind.ts';

/** Settled is within this share of the step; e^(−5) is 0.7 %, so five time constants are enough. */
const band = 0.01;
/** A step of less than this is no power coming on, in volts. */
const leastStep = 1;

/** From the supply coming on to the output staying within a hundredth of its step. */
export const settling = checkKind({
  kind: 'settling',
  title: 'Settling after power comes on',
  question: 'Does the output come to rest, and as soon as its lower corner lets it?',
  on: ['power-on'],
  applies: (designed) => chainOf(designed)?.transducer.biased !== undefined,
  sources: [
    clause(iepePractice, 'settling of the lower corner'),
    clause(tradePractice, 'five time constants; a drift without end is leakage'),
  ],
  judge: ({ designed, record }): readonly Judged[] => {
    const { rate, course } = record.measures;
    const stated = chainOf(designed)?.transducer.settling ?? answer(0);
    const known = fromAll(
      { rate, corner: lowerCorner(designed), scale: voltsPerNumber(record), stated },
      (each) => each,
    );
    if (!known.known) return wants(known.missing);
    const { corner, scale } = known.value;
    if (corner === 0) return [];
    const constant = 1 / (2 * Math.PI * corner);
    const expected = Math.max(5 * constant, known.value.stated);
    const step = course.stretch / known.value.rate;
    const seen = settled(course, scale, step);
    const facts = {
      expected: said`within ${measured('time', expected)}`,
      tolerance: 'half as long again: corners of single pieces differ',
      because: said`Five time constants of a corner at ${measured('frequency', corner)}, or what the data sheet states.`,
    };
    if (seen === undefined) {
      return [
        cannotTell({ ...facts, because: said`Nowhere does the record step by ${measured('voltage', leastStep)}.` }, [
          'a direct-coupled record that begins before the supply is switched on',
        ]),
      ];
    }
    const enough = seen.length - seen.start;
    if (enough < 1.5 * expected) {
      return [
        cannotTell({ ...facts, because: said`It goes on for ${measured('time', enough)} after the supply came on.` }, [
          said`a record that goes on for ${measured('time', 2 * expected)}`,
        ]),
      ];
    }
    if (seen.settledAt === undefined || seen.settledAt - seen.start > 1.5 * expected) {
      const found =
        seen.settledAt === undefined
          ? said`not within ${measured('time', enough)}`
          : measured('time', seen.settledAt - seen.start);
      return [
        fails({ ...facts, found }, [
          {
            cause: 'leakage: water or dirt in a connector or cable keeps the output moving',
            evidence: said`still moving after ${measured('time', 1.5 * expected)}`,
            next: 'Measure the insulation with the transducer unplugged; dry the connectors.',
          },
          {
            cause: 'another transducer or coupling than designed, with a lower corner',
            evidence: said`expected within ${measured('time', expected)}`,
            next: 'Read the label and the filter settings of the input.',
          },
          {
            cause: 'the transducer warms up on its surface',
            evidence: 'a slow approach to the final value',
            next: 'Record again an hour later.',
          },
        ]),
      ];
    }
    return [meets({ ...facts, found: measured('time', Math.max(0, seen.settledAt - seen.start)) })];
  },
});

interface Settled {
  readonly start: number;
  readonly settledAt: number | undefined;
  readonly length: number;
}

/**
 * Where along the course the supply came on (a tenth of the step passed) and from where on every stretch stays within
 * the band about the final value; nothing where no step is large enough.
 */
function settled({ means }: Course, scale: number, step: number): Settled | undefined {
  const volts = means.map((each) => each * scale);
  const last = volts.at(-1);
  if (last === undefined || volts.length < 20) return undefined;
  const first = volts[0]!;
  const swing = volts.reduce((most, each) => (Math.abs(each - first) > Math.abs(most) ? each - first : most), 0);
  if (Math.abs(swing) < leastStep) return undefined;
  const start = volts.findIndex((each) => Math.abs(each - first) > 0.1 * Math.abs(swing));
  const outside = volts.findLastIndex((each) => Math.abs(each - last) > band * Math.abs(swing));
  // Outside the band up to the last hundredth is a drift that has not ended.
  const settledAt = outside >= volts.length * 0.98 ? undefined : (outside + 1) * step;
  return { start: start * step, settledAt, length: volts.length * step };
}
