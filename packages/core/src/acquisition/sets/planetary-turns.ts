import { bareNumber, said } from '../../finding/measure.ts';
import type { FrequencyTable, PulseRow } from '../../machine/frequency-table.ts';
import { exactQuotient } from '../../machine/reduced.ts';
import { type Fraction, fromAll, showFraction, toNumber } from '../../quantity/index.ts';
import { frequencyIn, rowsCalled, type SetNeed, setKind } from '../set-kind.ts';
import type { SpectrumSet } from '../spectrum-set.ts';
import { ratioDrift, wholeTurns } from '../turns.ts';
import { type CarrierTurns, carrierTurns, meshHarmonics } from './planetary.ts';

/** Two windows, so that an average over them tells what repeats from what does not. Common practice, no source. */
const windows = 2;
const samplesPerPeriod = 2.56;
/** Digits with which a ratio is usually written down. */
const usualDigits = 4;

/**
 * Of a planetary stage, sampled by the turns of its carrier, which are counted from the pulses of another shaft by the
 * exact ratio: whole windows of teeth that meet again, and whole repeats of the pulses.
 */
export const planetaryTurns = setKind({
  kind: 'planetary-turns',
  purpose: 'planets, sun and ring of a planetary stage by the turn of the carrier, whatever the speed does',
  needs: (point, table) => {
    const [stage] = carrierTurns(table);
    if (stage === undefined || !point.targets.some(({ observable }) => observable.kind === 'line')) return undefined;
    const nothing = { name: 'planetary-turns', purpose: planetaryTurns.purpose, reach: [], apart: [], last: [] };
    const [pulse] = table.pulses;
    if (pulse === undefined)
      return { need: nothing, unknown: [`turns of the carrier of ${stage.stage}: no phase reference in the train`] };
    const known = fromAll(
      {
        carrier: stage.reduced,
        turn: pulse.turn.reduced,
        highest: stage.turn('highest'),
        lowest: stage.turn('lowest'),
      },
      (each) => ({ ...each, ratio: exactQuotient(each.turn, each.carrier) }),
    );
    if (!known.known) {
      return {
        need: nothing,
        unknown: known.missing.map(({ of, what }) => `turns of the carrier: ${what} of ${of} not known`),
      };
    }
    const { ratio, highest, lowest } = known.value;
    if (ratio === undefined) {
      return { need: nothing, unknown: [`turns of the carrier: '${pulse.shaft}' does not keep step with it`] };
    }
    return byTurns(table, stage, pulse, ratio, { highest, lowest });
  },
});

function byTurns(
  table: FrequencyTable,
  { stage, window }: CarrierTurns,
  pulse: PulseRow,
  ratio: Fraction,
  speed: { readonly highest: number; readonly lowest: number },
): SetNeed {
  const turns = wholeTurns(windows * window, ratio);
  const pulseTurns = turns * toNumber(ratio);
  const rounded = Number(toNumber(ratio).toPrecision(usualDigits));
  const drift = ratioDrift(ratio, rounded, turns);
  const mesh = rowsCalled(table, 'mesh').find((row) => row.line.element === stage)!;
  const meshOrder = fromAll({ f: frequencyIn(mesh, 'highest') }, ({ f }) => Math.round(f / speed.highest));
  const order = meshOrder.known ? meshOrder.value : 0;
  const samplesPerTurn = 2 ** Math.ceil(Math.log2(samplesPerPeriod * (meshHarmonics * order + order)));
  const recordLength = turns / speed.highest;
  const set: SpectrumSet = {
    name: 'planetary-turns',
    purpose: planetaryTurns.purpose,
    highestFrequency: (samplesPerTurn / samplesPerPeriod) * speed.highest,
    lines: Math.floor((turns * samplesPerTurn) / samplesPerPeriod),
    resolution: speed.highest / turns,
    recordLength,
    samplingRate: samplesPerTurn * speed.highest,
    samples: turns * samplesPerTurn,
    window: 'rectangular',
    averages: 1,
    orders: {
      samplesPerTurn,
      turns,
      resolution: 1 / turns,
      highest: samplesPerTurn / samplesPerPeriod,
      of: `carrier of ${stage}`,
      longest: turns / speed.lowest,
      by: { shaft: pulse.shaft, ratio, turns: pulseTurns, rounded: { ratio: rounded, drift } },
    },
    reach: undefined,
    apart: undefined,
    last: undefined,
    reasons: [
      `the same teeth of planet and ring meet again after ${window} turns of the carrier; ${windows} windows are ${windows * window}`,
      said`'${pulse.shaft}' turns ${showFraction(ratio)} to one, so its pulses repeat every ${String(ratio.denominator)} turns: ${turns} turns are ${bareNumber(pulseTurns, 6)} of it`,
      said`${bareNumber(recordLength, 4)} s at the highest speed, ${bareNumber(turns / speed.lowest, 4)} s at the lowest`,
      said`resample with the exact ratio: ${bareNumber(rounded)} would drift ${bareNumber(drift, 3)}° of the carrier in the record, ${bareNumber(drift * order, 3)}° of mesh phase`,
      `${samplesPerTurn} samples a turn reach beyond ${meshHarmonics} harmonics of the mesh, order ${order}`,
    ],
  };
  return { set, unknown: pulse.perTurn.known ? [] : [`pulses per turn of '${pulse.shaft}'`] };
}
