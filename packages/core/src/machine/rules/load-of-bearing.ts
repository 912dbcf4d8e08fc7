import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { Load } from '../bearing-geometry.ts';
import { kindOf, type MachineElement } from '../kinds.ts';
import type { Train } from '../train.ts';
import { oneElement } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

const bearing = (load: Record<string, string>) => ({
  kind: 'rolling-bearing',
  on: 'fan',
  elements: 16,
  'element-diameter': '24.5 mm',
  'pitch-diameter': '170 mm',
  'contact-angle': '12.5 deg',
  ...load,
});

const screen = (load: Record<string, string>) => {
  const train = oneElement(bearing(load));
  return {
    ...train,
    elements: { ...train.elements, exciter: { kind: 'screen-exciter', on: 'fan', stroke: '9 mm pp' } },
    operation: { shaft: 'fan', speed: '920 r/min' },
  };
};

export const loadOfBearing = trainRule({
  id: 'machine/load-of-bearing',
  title: 'Where the load turns with a ring, the bearing says so',
  prose:
    'Which ring fault has side lines depends on what the load does. In a pump it stands still, so the inner ring has them. On an exciter it turns with the inner ring, and in a planet it stays with the pin on the carrier: there a fault of the outer ring has them and one of the inner ring has none.',
  sources: [clause(tradePractice, 'side lines follow the load')],
  finds: ({ train }) =>
    train.elements.flatMap((element) => {
      if (element.kind !== 'rolling-bearing') return [];
      const turns = loadThatFollows(element, train);
      if (turns === undefined) return [];
      const { load } = element.sheet.values;
      if (load?.known === true && load.value === turns.load) return [];
      const stated = load?.known === true ? `the load '${load.value}'` : 'not stated what the load does';
      return [
        {
          weight: 'question',
          at: `${train.of}/${element.name}`,
          found: `${stated}, on ${turns.place}`,
          limit: `load: ${turns.load}`,
          because:
            'Read by the rule of a pump, a fault of one ring would be taken for one of the other: here the inner ring shows no side lines and the outer ring does.',
          remedy: [`state 'load: ${turns.load}'`],
          asks: `Does the load ${turns.load.replace('turns', 'turn')}?`,
        },
      ];
    }),
  valid: screen({ load: 'turns with the inner ring' }),
  invalid: screen({}),
});

interface Follows {
  readonly load: Load;
  readonly place: string;
}

/** What the place of a bearing says of its load, where it says anything. */
function loadThatFollows(
  { shafts }: MachineElement & { readonly kind: 'rolling-bearing' },
  train: Train,
): Follows | undefined {
  const ring = (shaft: string): Load | undefined =>
    shafts.inner === shaft
      ? 'turns with the inner ring'
      : shafts.outer === shaft
        ? 'turns with the outer ring'
        : undefined;
  for (const other of train.elements) {
    const standing = other.shafts as Readonly<Record<string, string | undefined>>;
    if (kindOf(other).shakesByDesign === true) {
      const load = Object.values(standing)
        .map((shaft) => ring(shaft!))
        .find((each) => each !== undefined);
      if (load !== undefined) return { load, place: `the shaft of ${other.name}` };
    }
    const { planet, carrier } = standing;
    if (planet === undefined || carrier === undefined || ring(planet) === undefined) continue;
    const load = ring(carrier);
    if (load !== undefined) return { load, place: `the planet pin of ${other.name}` };
  }
  return undefined;
}
