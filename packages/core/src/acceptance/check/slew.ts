import { measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { iepePractice } from '../../source/iepe-practice.ts';
import { clause } from '../../source/source.ts';
import { predictionOf } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { checkKind, fails, type Judged, meets, wants } from './check-kind.ts';

/** From this share of the limit on a slope is the limit's, where many slopes come as near. */
const near = 0.8;
const manySlopes = 0.02;
/** Of a sine 29 % of the slopes are within a tenth of the steepest, of a triangle all: from here on it is triangles. */
const triangles = 0.4;

/** Whether the electronics could drive the cable fast enough: |dV/dt| = I/C at most. */
export const slew = checkKind({
  kind: 'slew',
  title: 'Slew into the cable',
  question: 'Did the supply current drive the cable as fast as the signal asked?',
  on: ['running', 'taps'],
  applies: (designed) => predictionOf(designed)?.drive !== undefined,
  sources: [clause(iepePractice, 'slew limit I/(2 pi C V)')],
  judge: ({ designed, record }): readonly Judged[] => {
    const known = fromAll(
      { values: record.measures.values, drive: predictionOf(designed)!.drive!, scale: voltsPerNumber(record) },
      (each) => each,
    );
    if (!known.known) return wants(known.missing);
    const { values, drive, scale } = known.value;
    const limit = drive.current / drive.capacitance;
    const steepest = [values.rising, values.falling].reduce((a, b) => (a.greatest >= b.greatest ? a : b));
    const slope = steepest.greatest * Math.abs(scale);
    const perMicrosecond = (volts: number) => said`${measured('voltage', volts * 1e-6)} in a microsecond`;
    const facts = {
      expected: said`below ${perMicrosecond(limit)}`,
      tolerance: said`${near} of it, since the filter of the recorder rounds slopes`,
      found: perMicrosecond(slope),
      because: said`${measured('current', drive.current)} is left for ${measured('capacitance', drive.capacitance)} of cable.`,
    };
    const both = Math.min(values.rising.shareNearGreatest, values.falling.shareNearGreatest);
    const atLimit = slope >= near * limit && steepest.shareNearGreatest >= manySlopes;
    if (!atLimit && both < triangles) return [meets(facts)];
    return [
      fails(facts, [
        {
          cause: 'fast bursts become triangles: more cable, or less supply current, than the signal allows',
          evidence: said`${(100 * steepest.shareNearGreatest).toPrecision(2)} % of all slopes are as steep as the steepest`,
          next: 'Raise the supply current to what the transducer bears, and record the same bursts again.',
        },
        {
          cause: 'another cable than designed, with more capacitance',
          evidence: said`expected less than ${perMicrosecond(limit)}`,
          next: 'Measure the capacitance of the pair with the transducer unplugged.',
        },
      ]),
    ];
  },
});
