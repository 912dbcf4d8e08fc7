import { measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { rowsCalled, setKind } from '../set-kind.ts';
import { required, spectrumSet } from '../spectrum-set.ts';

/** Periods of the slowest mode that show its width. Common practice, no source. */
const periods = 20;

/** Of a body on springs or a tower: its own modes, which the high-pass of other records would take away. */
export const lowModes = setKind({
  kind: 'low-modes',
  purpose:
    'modes of the structure, of a body on its springs: not to be filtered away, for they tell of a broken spring',
  needs: (point, table) => {
    const modes = rowsCalled(table, 'mode').filter((row) => row.range.known);
    const line = point.targets.some(({ observable }) => observable.kind !== 'burst' && !observable.atRest);
    if (modes.length === 0 || !line) return undefined;
    const bands = modes.map((row) => ({ row, range: row.range }));
    const reach = required(
      bands.map(({ row, range }) => ({
        why: `twice ${row.line.name}`,
        value: fromAll({ range }, (known) => 2 * known.range.high),
      })),
    );
    const last = required(
      bands.map(({ row, range }) => ({
        why: `${periods} periods of ${row.line.name}`,
        value: fromAll({ range }, (known) => periods / known.range.low),
      })),
    );
    const set = spectrumSet({
      name: 'low-modes',
      purpose: lowModes.purpose,
      reach: reach.known,
      apart: [],
      last: last.known,
    });
    const from = Math.min(...bands.flatMap(({ range }) => (range.known ? [range.value.low / 2] : [])));
    return {
      set: {
        ...set,
        from,
        reasons: [...set.reasons, said`no high-pass above ${measured('frequency', from)}, half the slowest mode`],
      },
      unknown: [...reach.unknown, ...last.unknown],
    };
  },
});
