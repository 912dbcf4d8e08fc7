import { type DesignedPoint, showQuantity, showSpan } from '@soundpost/core';
import { chainParts } from '../../chain/chain-parts.ts';
import { answered, levelCell, statedCell, unknown, words } from '../cells.ts';
import { everyPoint, type PlacedPoint } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import type { Cell } from '../record.ts';
import { measureColumn, setTable, textColumn } from '../set-table.ts';

/** Every measuring point with its transducer, where it stands, what it reads and where its signal ends. */
export const instrumentList = issuedKind({
  kind: 'instrument-list',
  title: 'Instrument list',
  readers: 'whoever orders, installs and maintains the instruments: one line for each measuring point',
  orientation: 'landscape',
  sheets: (design, showing) => [
    {
      title: 'Instruments',
      blocks: [
        setTable<PlacedPoint>(
          'instruments',
          'Measuring points of the plant, in the order of its machines',
          [
            textColumn('Tag', ({ designed }) => words(designed.point.of), 2.4),
            textColumn('Service', ({ machine }) => words(machine.stated.title), 2),
            textColumn('Location', ({ designed }) => locationCell(designed), 2),
            textColumn(
              'Direction',
              ({ designed }) => answered(designed.point.direction, (direction) => words(direction)),
              1.6,
            ),
            textColumn('Transducer', ({ designed }) => partName(designed, 'transducer'), 1.3),
            textColumn('Kind', ({ designed }) => kindName(designed), 1.9),
            textColumn('Mount', ({ designed }) => partName(designed, 'mount'), 1.2),
            measureColumn('Range at 20 mA', ({ designed }) =>
              answered(designed.appraisal?.prediction.chain.transducer.oneNumber?.range, (range) =>
                levelCell(range, showing),
              ),
            ),
            textColumn(
              'Surface',
              ({ designed }) =>
                statedCell(designed.point.surfaceTemperature, designed.point.of, 'surface temperature', (value) =>
                  words(showQuantity('temperature', value, showing)),
                ),
              0.9,
            ),
            textColumn(
              'May stand on',
              ({ designed }) => {
                const range = designed.stated.chosen?.transducer.sheet.values.temperature;
                return statedCell(range, designed.point.of, 'temperature range of the transducer', (span) =>
                  words(showSpan('temperature', span, showing)),
                );
              },
              1.2,
            ),
            textColumn('Area', ({ designed }) => words(designed.area?.name ?? 'none stated'), 1.2),
            textColumn('Input', ({ designed }) => words(designed.appraisal?.prediction.chain.parts.input.name), 1),
          ],
          everyPoint(design),
          'No measuring point is stated.',
        ),
      ],
    },
  ],
});

function locationCell({ stated, point }: DesignedPoint): Cell {
  return statedCell(stated.statement.location, point.of, 'location', (location) => words(location));
}

function partName({ appraisal, point }: DesignedPoint, role: 'transducer' | 'mount'): Cell {
  if (appraisal === undefined) return unknown([{ of: point.of, what: role }]);
  return words(appraisal.prediction.chain.parts[role].name);
}

function kindName({ appraisal, point }: DesignedPoint): Cell {
  if (appraisal === undefined) return unknown([{ of: point.of, what: 'kind of transducer' }]);
  const part = chainParts(appraisal.prediction.chain.parts).find((each) => each.role === 'transducer');
  return words(part?.kind.name);
}
