import fc from 'fast-check';
import { expect, test } from 'vitest';
import { label } from './drawing.ts';
import { boxesAlong, placing } from './label-placing.ts';
import { fitted, inside, labelBox, overlap, textWidth, wrapped } from './text-extent.ts';

const bounds = { x: 0, y: 0, width: 400, height: 300 };
const place = fc.record({ x: fc.integer({ min: -20, max: 420 }), y: fc.integer({ min: -20, max: 320 }) });

test('law: labels that are placed touch neither each other nor what is kept free, and stay inside', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.array(place, { maxLength: 6 }), fc.string({ minLength: 1, maxLength: 12 })), {
        maxLength: 25,
      }),
      (wanted) => {
        const free = placing(bounds);
        const line = boxesAlong([
          [0, 300],
          [400, 0],
        ]);
        for (const box of line) free.keepFree(box);
        for (const [places, text] of wanted) free.place(places.map(({ x, y }) => label(x, y, text)));
        const boxes = free.placed.map(labelBox);
        for (const [index, box] of boxes.entries()) {
          expect(inside(box, bounds)).toBe(true);
          expect([...boxes.slice(index + 1), ...line].some((other) => overlap(box, other))).toBe(false);
        }
      },
    ),
  );
});

test('law: a text that is fitted is no wider than its room, and says that it was cut', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), fc.integer({ min: 0, max: 200 }), (text, room) => {
      const shown = fitted(text, room, 12);
      expect(textWidth(shown, 12) <= room || shown === '').toBe(true);
      if (shown !== text && shown !== '') expect(shown.endsWith('…')).toBe(true);
    }),
  );
});

test('a long name is set in lines, the last of them cut', () => {
  const lines = wrapped('resistance per length of one core of the cable', 90, 11, 2);
  expect(lines).toHaveLength(2);
  for (const line of lines) expect(textWidth(line, 11)).toBeLessThanOrEqual(90);
});
