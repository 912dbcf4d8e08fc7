import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { examplePoint } from './example.ts';
import { demandRule, type StatedPoint } from './rule.ts';

/** Words that mean something only from one side. */
const sided = /\b(left|right|clockwise|counter-?clockwise|anti-?clockwise|\d+ ?o'clock)\b/i;
/** Words that say which side. */
const viewed = /\b(seen|viewed?|looking|facing)\b/i;

export const viewDirection = demandRule<StatedPoint>({
  id: 'demand/view-direction',
  title: 'Left and right are seen from somewhere',
  prose:
    'Left seen from the driver is right seen from the driven machine. A transducer on the wrong side turns a phase by 180° and an orbit backwards.',
  sources: [clause(tradePractice, 'direction, seen from the driver')],
  finds: ({ statement: { direction }, point }) => {
    if (!direction.known || !sided.test(direction.value) || viewed.test(direction.value)) return [];
    return [
      {
        weight: 'question',
        at: point.of,
        found: `direction '${direction.value}'`,
        limit: 'a direction with the side it is seen from',
        because: 'Whoever mounts or replaces the transducer will take the other side one time in two.',
        remedy: [`write '${direction.value}, seen from the driver' or from where it is seen`],
        asks: `From which side is '${direction.value}' seen?`,
      },
    ];
  },
  valid: examplePoint({ direction: 'horizontal, to the right seen from the motor' }),
  invalid: examplePoint({ direction: 'left' }),
});
