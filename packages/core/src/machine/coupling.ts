import { answer, answerOf, countField, fromAll, optional } from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { type ElementLine, machineElementKind, present } from './element.ts';
import { counted, turning } from './form.ts';
import { equation } from './relation.ts';

const sources = [clause(tradePractice, 'couplings')];

export const couplingSheet = {
  elements: optional(countField('Jaws, bolts or flexible elements round the coupling', { symbol: 'n', example: '6' })),
} as const;

/** Two shafts that turn as one. */
export const coupling = machineElementKind({
  kind: 'coupling',
  name: 'Coupling, both shafts at one speed',
  sheet: couplingSheet,
  places: ['from', 'to'],
  relations: () => answer([{ words: 'a coupling turns both shafts as one', terms: equation(['from', 1], ['to', -1]) }]),
  lines: (sheet, place): readonly ElementLine[] => {
    const elements = present(sheet, 'elements');
    if (elements === undefined) return [];
    return [
      {
        name: 'element-pass',
        meaning: 'Pass of the jaws, bolts or flexible elements: uneven load among them',
        form: fromAll({ n: answerOf(elements, sheet.of, 'elements') }, ({ n }) => [
          counted(n, turning(place.shafts.from)),
        ]),
        harmonics: 2,
        sources,
      },
    ];
  },
  doubts: () => [],
  sources,
});
