import { bareNumber, said } from '../../finding/measure.ts';
import { crankStep } from '../../machine/slider-crank.ts';
import { fromAll } from '../../quantity/index.ts';
import { samplesPerLine, samplingRateFor } from '../../signal/spectrum-settings.ts';
import { frequencyIn, rowsCalled, setKind } from '../set-kind.ts';
import { nextOfSeries } from '../spectrum-set.ts';

/** Turns that show which knocks come back, and windows fine enough to tell a valve from a crosshead. Common practice. */
const turns = 32;
const windows = 12;

/** Of a reciprocating machine: the waveform of bursts, read by the angle of the crank. */
export const crankWaveform = setKind({
  kind: 'crank-waveform',
  purpose: 'knocks of crosshead, pin and valves by the angle of the crank: true peak in each window',
  needs: (point, table) => {
    const [reversal] = rowsCalled(table, 'rod-load-reversal');
    const bursts = point.targets.filter(({ observable }) => observable.scansBand);
    if (reversal === undefined || bursts.length === 0) return undefined;
    const bands = Object.fromEntries(bursts.map(({ name, band }) => [name, band]));
    const known = fromAll(
      { twice: frequencyIn(reversal, 'lowest'), bands: fromAll(bands, (each) => each) },
      (each) => each,
    );
    if (!known.known) {
      return {
        need: { name: 'crank-waveform', purpose: crankWaveform.purpose, reach: [], apart: [], last: [] },
        unknown: known.missing.map(({ of, what }) => `knocks by the crank: ${what} of ${of} not known`),
      };
    }
    const speed = known.value.twice / 2;
    const highest = Math.max(...Object.values(known.value.bands).map((band) => band.high));
    const highestFrequency = nextOfSeries(highest);
    const samplingRate = samplingRateFor(highestFrequency);
    const recordLength = turns / speed;
    const samples = Math.ceil(samplingRate * recordLength - 1e-6);
    const degreesPerSample = crankStep(speed, samplingRate);
    return {
      set: {
        name: 'crank-waveform',
        purpose: crankWaveform.purpose,
        highestFrequency,
        lines: Math.floor(samples / samplesPerLine),
        resolution: 1 / recordLength,
        recordLength,
        samplingRate,
        samples,
        window: 'rectangular',
        averages: 1,
        crank: { turns, degreesPerSample, windows },
        reach: { why: 'the highest band of bursts', value: highest },
        apart: undefined,
        last: { why: `${turns} turns of the crank`, value: recordLength },
        reasons: [
          said`waveform reaches beyond ${bareNumber(highest)} Hz, the highest band of bursts`,
          `${turns} turns of the crank, begun at top dead centre of throw 1; the angles of the other throws are counted from it`,
          said`${bareNumber(degreesPerSample, 3)}° of crank a sample, ${windows} windows of ${360 / windows}°, true peak in each: a peak derived from the rms under-reads knocks`,
        ],
      },
      unknown: [],
    };
  },
});
