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

/**
 * Polarity of each of those cores, in their order: that of its direct voltage against the return, and of the return
 * against it. A proximity system works below its common, so its common is the positive one. Common practice, no source.
 */
export const feedPolarity: Readonly<Record<Feed, readonly ('+' | '\u2212')[]>> = {
  'constant-current': ['+', '\u2212'],
  'self-generating': ['+', '\u2212'],
  'current-loop': ['+', '\u2212'],
  'voltage-supply': ['+', '+', '\u2212'],
  'negative-supply': ['\u2212', '\u2212', '+'],
};
