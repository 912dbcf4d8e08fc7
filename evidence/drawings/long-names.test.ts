import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { design } from '../../packages/core/src/index.ts';
import { plantOf, root } from '../reading.ts';
import { drawingFaults } from './drawing-faults.ts';
import { everyDrawing } from './every-drawing.ts';

const demo = readFileSync(resolve(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');

/** The demo pump under other names, with wheels on its shaft until it has so many elements more. */
function renamed(machine: string, point: string, element: string, wheels: number): string {
  const more = Array.from(
    { length: wheels },
    (_, index) =>
      `      ${element}-${index + 1}:\n        kind: impeller\n        on: pump\n        vanes: ${index + 5}\n`,
  );
  return demo
    .replaceAll('P-301', machine)
    .replaceAll('pump-drive-end-loop', `${point}-loop`)
    .replace('    elements:\n', `    elements:\n${more.join('')}`);
}

const word = fc
  .array(fc.constantFrom('W', 'M', 'a', 'i', '7', '-', 'x', 'Q'), { minLength: 1, maxLength: 60 })
  .map((signs) => `N${signs.join('')}e`.replace(/-+/g, '-'));

test('law: however long its names and train, no text of a drawing touches, leaves sheet or box, or is run through', () => {
  fc.assert(
    fc.property(word, word, word, fc.integer({ min: 0, max: 12 }), (machine, point, element, wheels) => {
      const of = design(plantOf(renamed(machine, point, element, wheels)), 1);
      const found = everyDrawing(of).flatMap(({ of: kind, on, drawing }) =>
        drawingFaults(drawing)
          // What is cut for want of room stands whole in the table beside the drawing.
          .filter(({ fault }) => fault !== 'cut off')
          .map(({ fault, text, other }) => `${kind}, ${on}: ${fault}: '${text}' ${other}`),
      );
      expect(found).toEqual([]);
    }),
    { numRuns: 12, seed: 5 },
  );
});
