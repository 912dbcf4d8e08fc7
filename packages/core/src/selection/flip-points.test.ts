import { expect, test } from 'vitest';
import { examplePlant } from '../../../../evidence/reading.ts';
import { reason } from '../chain/rules/rule.ts';
import { design } from '../design/design.ts';
import { appraisal } from './appraisal.ts';
import { assumptions } from './assumptions.ts';
import { flipPoints, verdictOf } from './flip-points.ts';

const designed = design(examplePlant('raw-water-pump'), 1);
const route = designed.machines[0]!.points[0]!;
const subject = { point: route.point, parts: { ...route.stated.way!, ...route.stated.chosen! } };
const flips = flipPoints(subject, designed.plant.policy);
const judge = (changed: typeof subject) => verdictOf(appraisal(changed.point, changed.parts, designed.plant.policy));

test('law: the verdict is as before on the near side of a flip point and another on the far side', () => {
  expect(flips.length).toBeGreaterThan(10);
  for (const flip of flips) {
    const assumption = assumptions(subject).find((each) => each.of === flip.of && each.what === flip.what)!;
    const sign = Math.sign(flip.decades);
    expect(judge(assumption.moved(subject, flip.decades - sign * 2e-4)), `${flip.of} ${flip.what} near`).toBe(
      flip.from,
    );
    expect(judge(assumption.moved(subject, flip.decades + sign * 1e-4)), `${flip.of} ${flip.what} far`).toBe(flip.to);
    expect(flip.decides, `${flip.of} ${flip.what}`).toBeDefined();
  }
});

test('law: a walk in 120 even steps finds the same turn as bisection', () => {
  for (const [of, what] of [
    ['transducer ACC-100', 'mounted resonance'],
    ['transducer ACC-100', 'noise'],
    ['target bearing bursts', 'largest level'],
    ['transducer ACC-100', 'low corner'],
  ] as const) {
    const assumption = assumptions(subject).find((each) => each.of === of && each.what === what)!;
    for (const direction of [-1, 1]) {
      const walked = Array.from({ length: 120 }, (_, step) => (direction * 2 * (step + 1)) / 120).find(
        (decades) => judge(assumption.moved(subject, decades)) !== judge(subject),
      );
      const bisected = flips.find(
        (each) => each.of === of && each.what === what && Math.sign(each.decades) === direction,
      );
      expect(bisected === undefined, `${what} ${direction}`).toBe(walked === undefined);
      if (walked !== undefined) expect(Math.abs(bisected!.decades - walked)).toBeLessThanOrEqual(2 / 120 + 1e-4);
    }
  }
});

test('law: the mounted resonance that just keeps bursts within +41 % at 10 kHz is 10 kHz over the ratio for +41 %', () => {
  // Undamped: r = √(1 − 1/1.41) = 0.5392; the quality of 12 moves it by less than half a per cent. Textbook, computed here.
  const flip = flips.find((each) => each.what === 'mounted resonance' && each.decades < 0)!;
  const hertz = 27_000 * 10 ** flip.decades;
  expect(Math.abs(hertz / (10_000 / Math.sqrt(1 - 1 / 1.41)) - 1)).toBeLessThan(0.005);
  expect(reason(flip.decides!)).toContain('bearing bursts');
});
