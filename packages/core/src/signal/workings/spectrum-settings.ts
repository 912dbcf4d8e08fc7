import { choiceField, countField, optional, quantityField, Refusal, si } from '../../quantity/index.ts';
import { samplingPractice } from '../../source/sampling-practice.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { lineDistance, recordLength, samplesFor, samplingRateFor } from '../spectrum-settings.ts';
import { windowCalled, windowNames } from '../windows/kinds.ts';
import { noiseBandwidth } from '../windows/properties.ts';
import { windowWeights } from '../windows/window.ts';
import { longestWindow } from './window-properties.ts';

export const spectrumSettings = working({
  name: 'spectrum-settings',
  title: 'Sampling rate, samples, record length and resolution of a spectrum',
  inputs: {
    highestFrequency: quantityField('frequency', 'Highest frequency of the spectrum', {
      symbol: 'F_max',
      example: '1000 Hz',
    }),
    lines: countField('Lines, a multiple of 25', { symbol: 'L', least: 25, example: '400' }),
    window: optional(choiceField(windowNames, 'Window, for the noise bandwidth of a line', { example: 'hann' })),
  },
  outputs: {
    samplingRate: output(quantityField('frequency', 'Sampling rate', { symbol: 'f_s' }), 'f_s = 2.56 · F_max'),
    samples: output(countField('Samples in one record', { symbol: 'N' }), 'N = 2.56 · L'),
    recordLength: output(quantityField('time', 'How long one record lasts', { symbol: 'T' }), 'T = L / F_max'),
    resolution: output(quantityField('frequency', 'Distance of the lines', { symbol: 'df' }), 'df = F_max / L'),
    noiseBandwidth: optionalOutput(
      quantityField('frequency', 'Noise bandwidth of a line with that window', { symbol: 'B_f' }),
      'B_f = df · N · Σ w_n² / (Σ w_n)²',
    ),
  },
  holds:
    'an analyser that shows 1/2.56 of its sampling rate; two lines are told apart only where they lie further apart than the noise bandwidth',
  sources: [clause(samplingPractice)],
  evaluate: ({ highestFrequency, lines, window }) => {
    if (!(highestFrequency > 0)) {
      throw new Refusal({
        read: `highest-frequency=${highestFrequency} Hz`,
        expected: 'a highest frequency above zero',
      });
    }
    const samples = samplesFor(lines);
    if (!Number.isInteger(samples) || samples > longestWindow) {
      throw new Refusal({
        read: `lines=${lines}`,
        expected: `a number of lines that 25 divides, of at most ${(longestWindow * 25) / 64}`,
        suggestion: `2.56 · ${lines} = ${samples} samples.`,
      });
    }
    const resolution = lineDistance(lines, highestFrequency);
    const weights = window === undefined ? undefined : windowWeights(windowCalled(window), samples, 'periodic');
    return {
      samplingRate: si('frequency', samplingRateFor(highestFrequency)),
      samples,
      recordLength: si('time', recordLength(lines, highestFrequency)),
      resolution: si('frequency', resolution),
      noiseBandwidth: weights === undefined ? undefined : si('frequency', noiseBandwidth(weights) * resolution),
    };
  },
  example: { 'highest-frequency': '1000 Hz', lines: '400', window: 'hann' },
});
