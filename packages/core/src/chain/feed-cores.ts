import type { Feed } from './transducer/transducer-kind.ts';

/**
 * What leaves a transducer, core by core, as the field cable must carry it; the last one is the return. Of a probe and a
 * supplied sensor the supply has a core of its own. Common practice, no source.
 */
export const feedCores: Readonly<Record<Feed, readonly string[]>> = {
  'constant-current': ['+', '\u2212'],
  'self-generating': ['+', '\u2212'],
  'current-loop': ['+', '\u2212'],
  'voltage-supply': ['supply', 'signal', 'common'],
  'negative-supply': ['supply', 'signal', 'common'],
};
