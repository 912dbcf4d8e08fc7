import { type Answer, fromAll } from '../../quantity/index.ts';
import { frequencyIn, linesOf, rowsCalled, setKind } from '../set-kind.ts';
import { required } from '../spectrum-set.ts';

/** The order at which running and standing vanes repeat lies far above what a housing shows, unless a target asks for it. */
const beyondReach = /\/(vane-diffuser|blade-guide-vane)$/;

/** Up to the highest mechanical line of the train and of the targets, with the closest known neighbours apart. */
export const velocitySpectrum = setKind({
  kind: 'velocity-spectrum',
  purpose: 'lines of shafts, bearings, vanes, gears and motor',
  needs: (point, table) => {
    const lines = linesOf(point, 'housing');
    if (lines.length === 0) return undefined;
    // What does not turn, a converter's carrier say, sets no range: it is not looked for here.
    const turning = table.rows.filter(
      (row) =>
        row.line.form.known &&
        row.line.form.value.every((term) => term.of.kind !== 'constant') &&
        !beyondReach.test(row.line.name),
    );
    const reach = required([
      ...turning.map((row) => ({ why: `${row.line.name} at highest`, value: frequencyIn(row, 'highest') })),
      ...lines.map((target) => ({ why: `target '${target.name}'`, value: highestOf(target.frequencies) })),
    ]);
    const apart = required(
      rowsCalled(table, 'pole-pass').map((row) => ({
        why: `twice line frequency stands ${row.line.name} away from an order of the shaft at highest`,
        value: frequencyIn(row, 'highest'),
      })),
    );
    return {
      need: {
        name: 'velocity-spectrum',
        purpose: velocitySpectrum.purpose,
        reach: reach.known,
        apart: apart.known,
        last: [],
      },
      unknown: [...reach.unknown, ...apart.unknown],
    };
  },
});

function highestOf(frequencies: Answer<readonly number[]>): Answer<number> {
  return fromAll({ frequencies }, ({ frequencies: each }) => Math.max(...each));
}
