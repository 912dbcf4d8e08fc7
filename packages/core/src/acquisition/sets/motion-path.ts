import { bareNumber, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { frequencyIn, rowsCalled, setKind } from '../set-kind.ts';
import { nextOfSeries, required, spectrumSet } from '../spectrum-set.ts';
import { phaseSkew } from '../turns.ts';

/** Orders that show looseness and impacts in the motion; turns that show it steady. Common practice, no source. */
const orders = 10;
const turns = 20;
const filterOrder = 2;

/** Of a machine that works by its own motion: stroke and path, X and Y at one instant, integrated twice. */
export const motionPath = setKind({
  kind: 'motion-path',
  purpose: 'stroke, its angle and its path: X and Y sampled at the same instant at every corner, integrated twice',
  needs: (point, table) => {
    const strokes = rowsCalled(table, 'stroke');
    const looked = point.targets.some(
      ({ observable, motion }) => observable.kind === 'line' && motion === 'displacement',
    );
    if (strokes.length === 0 || !looked) return undefined;
    const reach = required(
      strokes.map((row) => ({
        why: `${orders} orders of ${row.line.name}`,
        value: fromAll({ f: frequencyIn(row, 'highest') }, ({ f }) => orders * f),
      })),
    );
    const lowest = strokes.map((row) => ({ row, f: frequencyIn(row, 'lowest') }));
    const last = required(
      lowest.map(({ row, f }) => ({
        why: `${turns} turns of ${row.line.name} at lowest`,
        value: fromAll({ f }, (known) => turns / known.f),
      })),
    );
    const unknown = [...reach.unknown, ...last.unknown];
    const need = { name: 'motion-path', purpose: motionPath.purpose, reach: reach.known, apart: [], last: last.known };
    const slowest = lowest.flatMap(({ f }) => (f.known ? [f.value] : []));
    if (reach.known.length === 0 || slowest.length === 0) return { need, unknown };
    const set = spectrumSet(need);
    const least = Math.min(...slowest);
    const corner = cornerBelow(least);
    const error = 1 / Math.sqrt(1 + (corner / least) ** (2 * filterOrder)) - 1;
    const skew = phaseSkew(least, 1e-3);
    return {
      set: {
        ...set,
        integration: { corner, order: filterOrder, error },
        reasons: [
          ...set.reasons,
          said`high-pass of order ${filterOrder} at ${bareNumber(corner)} Hz before integration: ${bareNumber(100 * error, 2)} % at ${bareNumber(least, 4)} Hz`,
          said`one instant for all channels: 1 ms apart is ${bareNumber(skew, 3)}° of the stroke`,
        ],
      },
      unknown,
    };
  },
});

/** The highest of 1, 2, 5 · 10ⁿ not above a third of the slowest line. */
function cornerBelow(slowest: number): number {
  const third = slowest / 3;
  const above = nextOfSeries(third);
  const mantissa = above / 10 ** Math.floor(Math.log10(above) + 1e-9);
  return above / (Math.abs(mantissa - 5) < 1e-9 ? 2.5 : 2);
}
