import { measured, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { motorTrain } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

/** A carrier forms each period of the line from at least so many pulses. Common practice, no source. */
const leastPulses = 9;

export const carrierAboveLine = trainRule({
  id: 'machine/carrier-above-line',
  title: 'The carrier of a converter lies far above its line frequency',
  prose:
    'A converter builds each period of the line from many pulses; its carrier is one to twenty kilohertz. A carrier among the orders of the shaft was typed in another unit.',
  sources: [clause(tradePractice, 'converter carrier')],
  finds: ({ train }) =>
    train.elements.flatMap(({ sheet: { of, values } }) => {
      const stated = 'carrier' in values ? values.carrier : undefined;
      const line = 'lineFrequency' in values ? valueIfStated(values.lineFrequency) : undefined;
      if (stated?.known !== true || line === undefined || stated.value >= leastPulses * line) return [];
      const inKilohertz = stated.value * 1000;
      return [
        {
          weight: 'question',
          at: of,
          found: said`a carrier of ${measured('frequency', stated.value)}`,
          limit: measured('frequency', leastPulses * line),
          because: 'A line of the converter is taken for a bearing, or hidden, where its carrier is put wrongly.',
          remedy: ['read the carrier from the settings of the converter'],
          asks: said`Is the carrier ${measured('frequency', stated.value)}, or ${measured('frequency', inKilohertz)}?`,
        },
      ];
    }),
  valid: motorTrain({ carrier: '4 kHz' }),
  invalid: motorTrain({ carrier: '4 Hz' }),
});
