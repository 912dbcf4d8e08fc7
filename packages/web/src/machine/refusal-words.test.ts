import { expect, test } from 'vitest';
import { plantFrom } from '../engine/read-plant.ts';
import { refusalWords } from './refusal-words.ts';

const plant = (poles: string) => `soundpost: plant
version: 1
plant: { name: A }
catalogues: []
machines:
  M:
    title: A motor
    facts: {}
    shafts: [motor]
    elements:
      motor: { kind: induction-motor, on: motor, poles: ${poles} }
    operation: { shaft: motor, speed: 1480 r/min }
    points: {}
`;

function refused(poles: string): string {
  try {
    plantFrom(plant(poles), 'a/plant.yaml', {});
    return '';
  } catch (error) {
    return (error as Error).message;
  }
}

test('what a field is refused for is said without the place it is shown at', () => {
  const whole = refused('nonsense');
  expect(whole).toContain('plant.yaml:11:');
  const words = refusalWords(whole);
  expect(words).toMatch(/^read 'nonsense', expected a whole number/);
  expect(words).not.toContain('plant.yaml');
  expect(words).not.toContain('\n');
});

test('a message of another make stays whole', () => {
  expect(refusalWords('The file is gone.')).toBe('The file is gone.');
});
