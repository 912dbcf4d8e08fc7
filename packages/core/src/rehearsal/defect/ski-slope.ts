import { defectKind } from './defect-kind.ts';

/** A thermal or mechanical shock leaves a voltage that decays with the lower corner of the transducer. */
export const skiSlope = defectKind({
  kind: 'ski-slope',
  name: 'Ski slope after an overload',
  sized: 'step at the transducer',
  quantity: 'voltage',
  usual: 5,
  change: (size) => ({
    atSource: (samples, { rate, lead, lowerCorner }) => {
      const decay = (2 * Math.PI * lowerCorner) / rate;
      // The step falls just before the record: it begins with the whole of what decays.
      for (let index = lead; index < samples.length; index++) {
        samples[index]! += size * Math.exp(-decay * (index - lead));
      }
    },
  }),
});
