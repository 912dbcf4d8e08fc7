import {
  answerOf,
  fromAll,
  numberField,
  optional,
  type Sheet,
  spanField,
  textField,
  valueIfStated,
} from '../quantity/index.ts';
import { iso20816x1 } from '../source/iso-20816-1.ts';
import { singleDegreeOfFreedom } from '../source/single-degree-of-freedom.ts';
import { clause } from '../source/source.ts';
import { couplesNothing, machineElementKind } from './element.ts';
import { resonanceLine } from './standing-band.ts';

const sources = [
  clause(singleDegreeOfFreedom, 'half-power width'),
  clause(iso20816x1, 'natural frequency away from the exciting frequency', 'from memory'),
];

export const structuralModeSheet = {
  frequency: spanField('frequency', 'Natural frequency, from low to high where it is not known better', {
    symbol: 'f_0',
    example: '0.30..0.32 Hz',
  }),
  quality: optional(
    numberField('Quality of its peak, 1/(2ζ); left out: no width is added', { symbol: 'Q', example: '25' }),
  ),
  shape: optional(textField('What moves, and in which direction', { example: 'tower, fore and aft, first bending' })),
} as const;
export type StructuralModeSheet = Sheet<typeof structuralModeSheet>;

/** A natural frequency of base, tower, pipe, casing, or of a body on its springs. It stands on no shaft. */
export const structuralMode = machineElementKind({
  kind: 'structural-mode',
  name: 'Structural mode',
  sheet: structuralModeSheet,
  places: [],
  relations: () => couplesNothing,
  lines: (sheet) => {
    const quality = valueIfStated(sheet.values.quality);
    const shape = valueIfStated(sheet.values.shape);
    const span = answerOf(sheet.values.frequency, sheet.of, 'frequency');
    return [
      resonanceLine(
        sheet.of,
        fromAll({ span }, (known) => ({ ...known.span, ...(quality === undefined ? {} : { quality }) })),
        {
          name: 'mode',
          meaning: `A natural frequency, at every speed the same${shape === undefined ? '' : `: ${shape}`}`,
          sources,
        },
      ),
    ];
  },
  doubts: () => [],
  sources,
});
