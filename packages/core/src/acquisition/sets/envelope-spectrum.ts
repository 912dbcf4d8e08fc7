import { fromAll } from '../../quantity/index.ts';
import { frequencyIn, rowsCalled, setKind } from '../set-kind.ts';
import { required } from '../spectrum-set.ts';

/**
 * Harmonics of the inner ring that show a pattern, and cage turns that show a rhythm: fifteen while the machine runs
 * fast, and not fewer than twelve at its slowest. Common practice, no source.
 */
const harmonicsWanted = 5;
const cageTurns = [
  { state: 'highest', wanted: 15 },
  { state: 'lowest', wanted: 12 },
] as const;

/** Of the demodulated band of a burst target: five inner-ring harmonics, lines a third of the cage, turns of the cage. */
export const envelopeSpectrum = setKind({
  kind: 'envelope-spectrum',
  purpose: 'repetition of bursts: ring, cage and element faults',
  needs: (point, table) => {
    const burst = point.targets.find((target) => target.observable.scansBand);
    const inner = rowsCalled(table, 'inner-ring');
    const cages = rowsCalled(table, 'cage');
    if (burst === undefined || inner.length === 0) return undefined;
    const reach = required(
      inner.map((row) => ({
        why: `${harmonicsWanted} harmonics of ${row.line.name} at highest`,
        value: fromAll({ f: frequencyIn(row, 'highest') }, ({ f }) => harmonicsWanted * f),
      })),
    );
    const cage = cages.map((row) => ({ row, lowest: frequencyIn(row, 'lowest') }));
    const apart = required(
      cage.map(({ row, lowest }) => ({ why: `side lines at ${row.line.name} at lowest`, value: lowest })),
    );
    const last = required(
      cages.flatMap((row) =>
        cageTurns.map(({ state, wanted }) => ({
          why: `${wanted} turns of ${row.line.name} at ${state}`,
          value: fromAll({ f: frequencyIn(row, state) }, ({ f }) => wanted / f),
        })),
      ),
    );
    return {
      need: {
        name: 'envelope-spectrum',
        purpose: envelopeSpectrum.purpose,
        reach: reach.known,
        apart: apart.known,
        last: last.known,
        ...(burst.band.known ? { envelopeBand: burst.band.value } : {}),
      },
      unknown: [...reach.unknown, ...apart.unknown, ...last.unknown],
    };
  },
});
