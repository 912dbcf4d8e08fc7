import { defectKind } from './defect-kind.ts';

/** The shaft settles, the bracket warms or the probe creeps out. */
export const probeGapDrift = defectKind({
  kind: 'probe-gap-drift',
  name: 'Gap drifts along the record',
  sized: 'how far, from start to end',
  quantity: 'displacement',
  usual: 1e-4,
  change: (size) => ({
    atTerminal: (samples, { lead, sensitivity }) => {
      const step = (size * sensitivity) / Math.max(1, samples.length - lead);
      for (let index = lead; index < samples.length; index++) samples[index]! += step * (index - lead);
    },
  }),
});
