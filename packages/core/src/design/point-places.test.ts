import fc from 'fast-check';
import { expect, test } from 'vitest';
import { notStated, stated } from '../quantity/index.ts';
import type { PlantMachine, PlantPoint } from './plant.ts';
import { pointPlaces } from './point-places.ts';

interface Typed {
  readonly name?: string;
  readonly location?: string;
  readonly direction?: string;
  readonly hears?: readonly string[];
}

function machine(elements: readonly string[], points: readonly Typed[]): PlantMachine {
  return {
    train: { elements: elements.map((name) => ({ name })) },
    points: points.map(({ name = 'a', location, direction, hears }) => ({
      statement: {
        name,
        location: location === undefined ? notStated : stated(location),
        direction: direction === undefined ? notStated : stated(direction),
        ...(hears === undefined ? {} : { hears }),
      },
    })) as unknown as readonly PlantPoint[],
  } as unknown as PlantMachine;
}

const pump = ['motor', 'motor-drive-end', 'coupling', 'pump-drive-end', 'impeller'];
const placeOf = (elements: readonly string[], point: Typed) => pointPlaces(machine(elements, [point]))[0]!;

test('a location names the element all of whose words stand in it, the longest name first', () => {
  expect(placeOf(pump, { location: 'pump, drive-end bearing housing' }).on).toEqual({
    element: 'pump-drive-end',
    by: 'its location',
  });
  expect(placeOf(pump, { location: 'Motor, drive end' }).on?.element).toBe('motor-drive-end');
  expect(placeOf(pump, { location: 'motor, fan end' }).on?.element).toBe('motor');
});

test('negative: a part of a word names nothing, and of two that fit alike neither is taken', () => {
  expect(placeOf(pump, { location: 'motorised valve' }).on).toBeUndefined();
  expect(placeOf(['fan-inner', 'fan-outer'], { location: 'fan, between inner and outer bearing' }).on).toBeUndefined();
  expect(placeOf(pump, {}).on).toBeUndefined();
});

test('what a point hears goes first; of several, the location tells which', () => {
  expect(placeOf(pump, { hears: ['impeller', 'pump'], location: 'motor' }).on).toEqual({
    element: 'impeller',
    by: 'what it hears',
  });
  const hears = ['coupling', 'pump-drive-end'];
  expect(placeOf(pump, { hears, location: 'pump side of the coupling' }).on?.element).toBe('coupling');
  expect(placeOf(pump, { hears, location: 'motor' }).on).toBeUndefined();
  expect(placeOf(pump, { hears, name: 'pump-drive-end-axial' }).on).toEqual({
    element: 'pump-drive-end',
    by: 'its name',
  });
});

test('direction and the side it is seen from are taken as stated, and not made up', () => {
  const { looks, seen, rotation } = placeOf(pump, { direction: 'horizontal, to the right seen from the motor' });
  expect([looks, seen, rotation]).toEqual(['horizontal', 'seen from the motor', undefined]);
  expect(placeOf(pump, { direction: 'about 30 degrees from vertical' }).looks).toBeUndefined();
  expect(placeOf(pump, { direction: 'vertically' })).toMatchObject({ looks: 'vertical', seen: undefined });
});

test('law: a point sits at an element of its train or at none, and numbers count from 1', () => {
  const word = fc.constantFrom('fan', 'motor', 'end', 'drive', 'x', '1', '');
  const text = fc.array(word, { maxLength: 4 }).map((words) => words.join('-'));
  fc.assert(
    fc.property(fc.uniqueArray(text, { maxLength: 5 }), fc.array(text, { maxLength: 4 }), (elements, locations) => {
      const places = pointPlaces(
        machine(
          elements,
          locations.map((location) => ({ location })),
        ),
      );
      expect(places.map((each) => each.number)).toEqual(locations.map((_, index) => index + 1));
      for (const { on } of places) if (on !== undefined) expect(elements).toContain(on.element);
    }),
  );
});
