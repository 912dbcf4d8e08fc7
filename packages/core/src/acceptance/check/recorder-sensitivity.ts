import { measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { chainOf, pieceTolerance, sensitivityAtInput } from '../expected.ts';
import { humanErrorSources } from '../human-errors.ts';
import { checkKind, fails, type Judged, meets, wants } from './check-kind.ts';
import { causesOfRatio } from './sensitivity-causes.ts';

/** What the recorder was told of the sensitivity, against the transducer as designed. Looked at without any motion. */
export const recorderSensitivity = checkKind({
  kind: 'recorder-sensitivity',
  title: 'Sensitivity told to the recorder',
  question: 'Was the recorder told the sensitivity of the transducer that was designed?',
  on: ['at-rest', 'stopped', 'taps', 'calibrator', 'beside-reference', 'slow-roll', 'running'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  sources: [clause(tradePractice, 'label and recorder agree within the spread of pieces'), ...humanErrorSources],
  judge: ({ designed, record }): readonly Judged[] => {
    const { sensitivity } = record.statement;
    // Where nobody says, volts over the designed sensitivity are read, and there is nothing to contradict.
    if (!sensitivity.known) return [];
    const known = fromAll({ designed: sensitivityAtInput(designed), piece: pieceTolerance(designed) }, (each) => each);
    if (!known.known) return wants(known.missing);
    const { piece } = known.value;
    const ratio = Math.abs(sensitivity.value / known.value.designed);
    const facts = {
      expected: said`${measured('ratio', 1)} of the sensitivity as designed`,
      tolerance: said`${measured('ratio', 1 + piece.low)} to ${measured('ratio', 1 + piece.high)}, the spread of pieces`,
      found: said`${measured('ratio', ratio, 4)} of it`,
      because: 'What the recorder was told turns volts into motion; the transducer does not know of it.',
    };
    if (ratio >= 1 + piece.low - 1e-9 && ratio <= 1 + piece.high + 1e-9) return [meets(facts)];
    const spread = Math.max(0.01, piece.high, -piece.low);
    // A sensitivity told too large makes the reading too small: the ratio of readings is its inverse.
    return [
      fails(
        facts,
        causesOfRatio(1 / ratio, spread, [
          {
            cause: 'another transducer stands there than was designed',
            evidence: said`told over designed is ${ratio.toPrecision(3)}`,
            next: 'Read the label of the transducer against the instrument list.',
          },
        ]),
      ),
    ];
  },
});
