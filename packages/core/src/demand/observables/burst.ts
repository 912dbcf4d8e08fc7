import { noiseInBand, observable } from './observable.ts';

/** Short bursts, as an impact in a bearing gives: their peak against the rms noise of the band they fill. */
export const burst = observable({
  kind: 'burst',
  meaning: 'bursts in a band',
  isOneNumber: false,
  scansBand: true,
  against: 'peak',
  noise: 'hides',
  atRest: false,
  noiseBandwidth: noiseInBand,
});
