import { frequencyIn, linesOf, rowsCalled, setKind } from '../set-kind.ts';
import { required } from '../spectrum-set.ts';

/** About twice line frequency, fine enough to part it from the shaft orders even at the lowest speed. */
export const lowRange = setKind({
  kind: 'low-range',
  purpose: 'electrical against mechanical: twice line frequency beside an order of the shaft',
  needs: (point, table) => {
    const motors = rowsCalled(table, 'pole-pass');
    if (motors.length === 0 || linesOf(point, 'housing').length === 0) return undefined;
    const reach = required(
      rowsCalled(table, 'twice-line').map((row) => ({
        why: `${row.line.name} at highest`,
        value: frequencyIn(row, 'highest'),
      })),
    );
    const apart = required(
      motors.map((row) => ({
        why: `twice line frequency stands ${row.line.name} away from an order of the shaft at lowest`,
        value: frequencyIn(row, 'lowest'),
      })),
    );
    return {
      need: { name: 'low-range', purpose: lowRange.purpose, reach: reach.known, apart: apart.known, last: [] },
      unknown: [...reach.unknown, ...apart.unknown],
    };
  },
});
