import { measured, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { operatingRange } from '../state.ts';
import { motorTrain } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

const example = (duty: string) => ({
  ...motorTrain({}),
  operation: { motor: 'motor', frequency: '25..50 Hz', states: { duty } },
});

export const stateInsideRange = trainRule({
  id: 'machine/state-inside-range',
  title: 'A named operating state lies inside the operating range',
  prose: 'What is proven over the range is not proven outside it; a state beyond it is a wrong range or a wrong state.',
  sources: [clause(tradePractice, 'operating range')],
  finds: ({ train }) => {
    const range = operatingRange(train);
    if (!range.known) return [];
    const { low, high } = range.value;
    const quantity = train.operation.by === 'shaft' ? 'shaft speed' : 'frequency';
    return train.operation.states
      .filter(({ at }) => at < low * (1 - 1e-9) || at > high * (1 + 1e-9))
      .flatMap(({ name, at }) => [
        {
          weight: 'question',
          at: `${train.of}/operation`,
          found: said`the state '${name}' at ${measured(quantity, at)}`,
          limit: said`${measured(quantity, low)} to ${measured(quantity, high)}`,
          because: 'Coincidences, ranges and demands are computed over the operating range only.',
          remedy: ['widen the range', 'correct the state'],
          asks: 'Does the machine run there?',
        },
      ]);
  },
  valid: example('42 Hz'),
  invalid: example('60 Hz'),
});
