import { noiseInBand, observable } from './observable.ts';

/** One value for a whole band: judged at the components that make it up, against the noise of the band. */
export const overall = observable({
  kind: 'overall',
  meaning: 'one value for a band',
  isOneNumber: true,
  scansBand: false,
  against: 'rms',
  noise: 'adds',
  atRest: false,
  noiseBandwidth: noiseInBand,
});
