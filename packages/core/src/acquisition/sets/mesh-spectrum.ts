import type { FrequencyRow, FrequencyTable } from '../../machine/frequency-table.ts';
import { fromAll } from '../../quantity/index.ts';
import { frequencyIn, linesOf, rowsCalled, setKind } from '../set-kind.ts';
import { required } from '../spectrum-set.ts';

/** Of every pair of wheels on shafts that stand: its mesh with harmonics, and the side lines of either wheel apart. */
export const meshSpectrum = setKind({
  kind: 'mesh-spectrum',
  purpose: 'tooth mesh with its harmonics, and the side lines that tell which wheel is worn',
  needs: (point, table) => {
    const meshes = meshesOf(table);
    if (meshes.length === 0 || linesOf(point, 'housing').length === 0) return undefined;
    const reach = required(
      meshes.map(({ mesh }) => ({
        why: `${mesh.line.harmonics} harmonics of ${mesh.line.name} at highest`,
        value: fromAll({ f: frequencyIn(mesh, 'highest') }, ({ f }) => mesh.line.harmonics * f),
      })),
    );
    const apart = required(
      meshes.flatMap(({ mesh, sides }) =>
        sides.map((side) => ({
          why: `${side.line.name} beside the mesh at lowest`,
          value: fromAll(
            { centre: frequencyIn(mesh, 'lowest'), beside: frequencyIn(side, 'lowest') },
            ({ centre, beside }) => Math.abs(centre - beside),
          ),
        })),
      ),
    );
    return {
      need: {
        name: 'mesh-spectrum',
        purpose: meshSpectrum.purpose,
        reach: reach.known,
        apart: apart.known,
        last: [],
      },
      unknown: [...reach.unknown, ...apart.unknown],
    };
  },
});

interface Mesh {
  readonly mesh: FrequencyRow;
  readonly sides: readonly FrequencyRow[];
}

/** Meshes that have a side line at the turns of either wheel; those of a carrier are looked at by turns of their own. */
function meshesOf(table: FrequencyTable): readonly Mesh[] {
  const sides = [...rowsCalled(table, 'mesh-lower-driving'), ...rowsCalled(table, 'mesh-lower-driven')];
  return rowsCalled(table, 'mesh').flatMap((mesh) => {
    const own = sides.filter((side) => side.line.element === mesh.line.element);
    return own.length === 0 ? [] : [{ mesh, sides: own }];
  });
}
