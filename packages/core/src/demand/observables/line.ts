import { noiseInLine, observable } from './observable.ts';

/** A single frequency in a spectrum: rms against the noise of one line. */
export const line = observable({
  kind: 'line',
  meaning: 'a line in a spectrum',
  isOneNumber: false,
  scansBand: false,
  against: 'rms',
  noise: 'hides',
  atRest: false,
  noiseBandwidth: noiseInLine,
});
