import type { FrequencyLine } from '../../machine/frequency-line.ts';
import type { FrequencyTable } from '../../machine/frequency-table.ts';
import { type Reduced, timesReduced } from '../../machine/reduced.ts';
import { type Answer, type Fraction, fraction, fromAll, toNumber } from '../../quantity/index.ts';
import { frequencyIn, rowsCalled } from '../set-kind.ts';

/** Harmonics of a planetary mesh that show how its side lines grow. Common practice, no source. */
export const meshHarmonics = 5;

/** Turns of the carrier against the ring, of one stage. */
export interface CarrierTurns {
  readonly stage: string;
  /** Turns until the same planet tooth meets the same ring tooth. */
  readonly window: number;
  turn(state: string): Answer<number>;
  readonly reduced: Answer<Reduced>;
}

/** Of every planetary stage of a table: its line of a planet tooth that meets a ring tooth again is one window of turns. */
export function carrierTurns(table: FrequencyTable): readonly CarrierTurns[] {
  return rowsCalled(table, 'hunting-planet-ring').flatMap((row) => {
    const share = shareOfTurn(row.line);
    if (share === undefined) return [];
    const window = Number(share.denominator);
    const whole = fraction(window);
    return [
      {
        stage: row.line.element,
        window,
        turn: (state: string) => fromAll({ f: frequencyIn(row, state) }, ({ f }) => window * f),
        reduced: fromAll({ form: row.line.reduced }, ({ form }) =>
          timesReduced({ times: toNumber(whole), exact: whole, low: window, high: window }, form),
        ),
      },
    ];
  });
}

function shareOfTurn({ form }: FrequencyLine): Fraction | undefined {
  return form.known ? form.value[0]?.exact : undefined;
}
