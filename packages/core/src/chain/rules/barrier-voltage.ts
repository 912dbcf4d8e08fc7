import { measured, said } from '../../finding/measure.ts';
import { type Answer, answer, fromAll, unanswered } from '../../quantity/index.ts';
import { barrierPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { MeasuringChain } from '../chain.ts';
import { loopVoltage } from '../loop-load.ts';
import { type Judgement, judged, rule } from './rule.ts';

/** What a supply is asked to stay below the working voltage, so that its own drift does not reach it. */
const room = 0.5;

export const barrierVoltage = rule({
  id: 'chain/barrier-voltage',
  title: 'The supply stays below the working voltage of the barrier',
  prose:
    'Above its working voltage a shunt-diode barrier leaks: the bias shifts, the loop reads high, and in the end its fuse ' +
    'goes. It is judged at the top of the tolerance of the supply, not at its name.',
  remedy: ['a supply specified to stay below the working voltage', 'a galvanic isolator, which has no such limit'],
  sources: [clause(barrierPractice)],
  judge: ({ prediction: { chain } }) =>
    chain.inLine.flatMap((part) => {
      if (part.earthed === undefined) return [];
      return judged(
        fromAll({ works: part.earthed.workingVoltage, highest: highestVoltage(chain) }, (known) => known),
        { rule: 'chain/barrier-voltage', what: `highest voltage at ${part.of}` },
        ({ works, highest }): readonly Judgement[] => [
          {
            rule: 'chain/barrier-voltage',
            outcome: highest <= works ? 'meets' : 'fails',
            what: `highest voltage at ${part.of}`,
            found: measured('voltage', highest),
            limit: measured('voltage', works),
            ...(highest <= works
              ? {}
              : {
                  needs: said`to specify the supply at no more than ${measured('voltage', works - room)} with its tolerance, or to take an isolator`,
                }),
          },
        ],
      );
    }),
});

/** The top of the supply of a loop, or of the source behind a constant current; zero where the line carries no supply. */
function highestVoltage(chain: MeasuringChain): Answer<number> {
  if (chain.transducer.biased !== undefined && chain.fedBy !== undefined) return chain.fedBy.highest;
  if (chain.transducer.oneNumber === undefined) return answer(0);
  const supply = loopVoltage(chain);
  if (supply === undefined) return unanswered([{ of: chain.of, what: 'loop supply' }]);
  return fromAll({ supply }, ({ supply: span }) => span.high as number);
}
