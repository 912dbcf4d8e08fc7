import {
  choiceField,
  countField,
  decibelField,
  numberField,
  optional,
  quantityField,
  Refusal,
  si,
} from '../../quantity/index.ts';
import { harris1978 } from '../../source/harris-1978.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { windowCalled, windowNames } from '../windows/kinds.ts';
import { coherentGain, noiseBandwidth, scallopingLoss } from '../windows/properties.ts';
import { windowDefinitions, windowWeights } from '../windows/window.ts';

/** Records longer than this are not weighed here: a wrong number typed must not hold the machine for minutes. */
export const longestWindow = 2 ** 24;

export const windowProperties = working({
  name: 'window-properties',
  title: 'What a window does to a spectrum: gain, noise bandwidth, scalloping',
  inputs: {
    window: choiceField(windowNames, 'Window', { example: 'hann' }),
    length: countField('Samples in the record', { symbol: 'N', least: 16, example: '4096' }),
    definition: choiceField(
      windowDefinitions,
      'Place of the samples: periodic n/N (spectra), symmetric n/(N − 1) (filter design)',
    ),
    samplingRate: optional(
      quantityField('frequency', 'Sampling rate, for the noise bandwidth in hertz', { symbol: 'f_s' }),
    ),
  },
  outputs: {
    coherentGain: output(
      numberField('Coherent gain: divide the amplitude of a line by it', { symbol: 'CG' }),
      'CG = Σ w_n / N',
    ),
    enbwBins: output(numberField('Equivalent noise bandwidth in lines', { symbol: 'B' }), 'B = N · Σ w_n² / (Σ w_n)²'),
    enbw: optionalOutput(
      quantityField('frequency', 'Equivalent noise bandwidth', { symbol: 'B_f' }),
      'B_f = B · f_s / N',
    ),
    scalloping: output(
      decibelField('Scalloping loss: how much a sine half way between two lines is read too low', { symbol: 'loss' }),
      'loss = −20 · lg(|Σ w_n · e^(−jπn/N)| / Σ w_n)',
    ),
  },
  holds:
    'the window as defined, nothing else; symmetric instead of periodic raises the noise bandwidth by about N/(N − 1)',
  sources: [clause(harris1978, 'Table I, definitions')],
  evaluate: ({ window, length, definition, samplingRate }) => {
    if (length > longestWindow) {
      throw new Refusal({ read: `length=${length}`, expected: `a record of at most ${longestWindow} samples` });
    }
    if (samplingRate !== undefined && !(samplingRate > 0)) {
      throw new Refusal({ read: `sampling-rate=${samplingRate} Hz`, expected: 'a sampling rate above zero' });
    }
    const weights = windowWeights(windowCalled(window), length, definition);
    const enbwBins = noiseBandwidth(weights);
    return {
      coherentGain: coherentGain(weights),
      enbwBins,
      enbw: samplingRate === undefined ? undefined : si('frequency', (enbwBins * samplingRate) / length),
      scalloping: scallopingLoss(weights),
    };
  },
  example: { window: 'hann', length: '1024', definition: 'periodic', 'sampling-rate': '2560 Hz' },
});
