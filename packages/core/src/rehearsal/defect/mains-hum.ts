import { defectKind } from './defect-kind.ts';

/** Exactly the mains, whatever the machine does. */
export const mainsHum = defectKind({
  kind: 'mains-hum',
  name: 'Mains hum from a ground loop',
  sized: 'rms at the input terminal, at 50 Hz; its double and triple beside it',
  quantity: 'voltage',
  usual: 0.001,
  change: (size) => ({
    atTerminal: (samples, { rate, random }) => {
      const phase = 2 * Math.PI * random.uniform();
      for (const [times, share] of [
        [1, 1],
        [2, 0.2],
        [3, 0.35],
      ] as const) {
        const [turn, peak] = [(2 * Math.PI * 50 * times) / rate, Math.SQRT2 * size * share];
        for (let index = 0; index < samples.length; index++) samples[index]! += peak * Math.cos(turn * index + phase);
      }
    },
  }),
});
