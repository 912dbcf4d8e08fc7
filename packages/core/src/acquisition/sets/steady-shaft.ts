import { bareNumber, measured, said } from '../../finding/measure.ts';
import { type Answer, fromAll } from '../../quantity/index.ts';
import { linesOf, setKind, shaftSpeedIn } from '../set-kind.ts';
import { linesApart, required, spectrumSet } from '../spectrum-set.ts';

/** Oil whirl at 0.45 and looseness or rub at 0.50 of the speed are told apart: a twentieth of the speed between them. */
const whirlFromHalf = 0.05;

/** Of a shaft in its bearing at constant speed: orders up to the highest target, whirl apart from the half order. */
export const steadyShaft = setKind({
  kind: 'steady-shaft',
  purpose: 'shaft in its bearing at steady speed: orders, whirl, rub; X and Y at the same instant, direct-coupled',
  needs: (point, table, running) => {
    // A shaft that stands still has no orders; what it does then is a position.
    const lines = linesOf(point, 'shaft').filter(({ frequencies }) => !frequencies.known || frequencies.value[0]! > 0);
    if (lines.length === 0) return undefined;
    const highest = shaftSpeedIn(table, running, 'highest');
    const reach = required(
      lines.map(({ name, frequencies }) => ({ why: `target '${name}'`, value: most(frequencies) })),
    );
    const apart = required([
      {
        why: 'oil whirl and half order of the shaft at highest',
        value: fromAll({ highest }, (known) => whirlFromHalf * known.highest),
      },
    ]);
    const unknown = [...reach.unknown, ...apart.unknown];
    const need = {
      name: 'steady-shaft',
      purpose: steadyShaft.purpose,
      reach: reach.known,
      apart: apart.known,
      last: [],
    };
    if (reach.known.length === 0) return { need, unknown };
    const set = spectrumSet(need);
    const slowest = (set.resolution * linesApart) / whirlFromHalf;
    const lowest = shaftSpeedIn(table, running, 'lowest');
    const tooSlow =
      lowest.known && lowest.value < slowest * (1 - 1e-9)
        ? [
            said`below ${measured('shaft speed', slowest)} these lines no longer tell ${bareNumber(0.45)} × from ${bareNumber(0.5)} ×: take the synchronous set`,
          ]
        : [];
    return { set: { ...set, reasons: [...set.reasons, ...tooSlow] }, unknown };
  },
});

function most(frequencies: Answer<readonly number[]>): Answer<number> {
  return fromAll({ frequencies }, ({ frequencies: each }) => Math.max(...each));
}
