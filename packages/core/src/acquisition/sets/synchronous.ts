import { bareNumber, measured, said } from '../../finding/measure.ts';
import { linesOf, setKind, shaftSpeedIn } from '../set-kind.ts';

/** A power of two, for 50 orders at 2.56 samples per period; and turns enough for a line spacing of 1/64 order. */
const samplesPerTurn = 128;
const turns = 64;
const samplesPerPeriod = 2.56;
/** Turns of a record while the speed moves: short, so that amplitude and phase belong to one speed. Common practice. */
const runUpTurns = 8;

/** Of a shaft in its bearing, sampled by its own turns from the once-per-turn mark: for orbits and for run-up. */
export const synchronous = setKind({
  kind: 'synchronous',
  purpose: 'orbits, orders and phase by the turn of the shaft; run-up and run-down',
  needs: (point, table, running) => {
    if (linesOf(point, 'shaft').length === 0) return undefined;
    const speed = shaftSpeedIn(table, running, 'highest');
    if (!speed.known || !(speed.value > 0)) {
      return {
        need: { name: 'synchronous', purpose: synchronous.purpose, reach: [], apart: [], last: [] },
        unknown: speed.known
          ? ['samples by the turn: the shaft does not turn']
          : speed.missing.map((each) => `samples by the turn: ${each.what} of ${each.of} not known`),
      };
    }
    const highest = samplesPerTurn / samplesPerPeriod;
    const recordLength = turns / speed.value;
    const runUp = running.runUp;
    const rate = runUp?.known === true && runUp.value > 0 ? speed.value / runUp.value : undefined;
    const speedChange = rate === undefined ? undefined : rate * recordLength;
    return {
      set: {
        name: 'synchronous',
        purpose: synchronous.purpose,
        highestFrequency: highest * speed.value,
        lines: (turns * samplesPerTurn) / samplesPerPeriod,
        resolution: speed.value / turns,
        recordLength,
        samplingRate: samplesPerTurn * speed.value,
        samples: turns * samplesPerTurn,
        window: 'rectangular',
        averages: 1,
        orders: {
          samplesPerTurn,
          turns,
          resolution: 1 / turns,
          highest,
          ...(speedChange === undefined ? {} : { speedChange }),
        },
        reach: undefined,
        apart: undefined,
        last: undefined,
        reasons: [
          said`${samplesPerTurn} samples a turn, triggered by the once-per-turn mark: ${bareNumber(highest)} orders`,
          said`${turns} whole turns: lines ${bareNumber(1 / turns, 3)} orders apart, no window needed for what turns with the shaft`,
          ...(speedChange === undefined || rate === undefined
            ? []
            : [
                said`run-up: the speed moves ${measured('shaft speed', speedChange)} in one record; with ${runUpTurns} turns ${measured('shaft speed', (speedChange * runUpTurns) / turns)}`,
              ]),
        ],
      },
      unknown: runUp?.known === false ? ['run-up: its time is not known'] : [],
    };
  },
});
