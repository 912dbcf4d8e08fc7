import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { disputed } from '../speeds.ts';
import { gearTrain } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

export const shaftReached = trainRule({
  id: 'machine/shaft-reached',
  title: 'The speed of every shaft follows from the reference',
  prose: 'A shaft that nothing known joins to the reference has no speed, and none of the lines on it has a frequency.',
  sources: [clause(tradePractice, 'train kinematics from one reference speed')],
  finds: ({ train, speeds }) =>
    train.shafts.flatMap((shaft) => {
      const ratio = speeds.shafts[shaft]!;
      if (ratio.known || ratio.missing.every(({ what }) => what === disputed)) return [];
      const missing = ratio.missing.map(({ of, what }) => `${what} of ${of}`).join(', ');
      return [
        {
          weight: 'question',
          at: `${train.of}/${shaft}`,
          found: `the speed of shaft '${shaft}' does not follow from '${speeds.reference}'`,
          limit: '',
          because: `Not known: ${missing}.`,
          remedy: ['state what is missing', 'add the element that drives the shaft'],
          asks: `Who knows ${missing}?`,
        },
      ];
    }),
  valid: gearTrain({}),
  invalid: gearTrain({ 'driven-teeth': 'unknown' }),
});
