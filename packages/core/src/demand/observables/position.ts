import { answer } from '../../quantity/index.ts';
import { observable } from './observable.ts';

/** Where the shaft stands: the chain must pass zero frequency. */
export const position = observable({
  kind: 'position',
  meaning: 'a position at rest',
  isOneNumber: false,
  scansBand: false,
  against: 'peak',
  noise: 'hides',
  atRest: true,
  noiseBandwidth: () => answer({ band: { low: 0, high: 0 } }),
});
