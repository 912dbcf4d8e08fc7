import { fromAll } from '../../quantity/index.ts';
import { frequencyIn, rowsCalled, setKind } from '../set-kind.ts';
import { required } from '../spectrum-set.ts';
import { carrierTurns, meshHarmonics } from './planetary.ts';

/** By the clock: five harmonics of a planetary mesh, side lines at the turns of the carrier apart. */
export const planetaryMesh = setKind({
  kind: 'planetary-mesh',
  purpose: 'mesh of a planetary stage with its side lines at the turns of the carrier, while the speed is steady',
  needs: (point, table) => {
    const stages = carrierTurns(table);
    if (stages.length === 0 || !point.targets.some(({ observable }) => observable.kind === 'line')) return undefined;
    const reach = required(
      stages.map(({ stage }) => ({
        why: `${meshHarmonics} harmonics of ${stage}/mesh at highest`,
        value: fromAll(
          { f: frequencyIn(rowsCalled(table, 'mesh').find((row) => row.line.element === stage)!, 'highest') },
          ({ f }) => meshHarmonics * f,
        ),
      })),
    );
    const apart = required(
      stages.map(({ stage, turn }) => ({
        why: `side lines at one turn of the carrier of ${stage}`,
        value: turn('highest'),
      })),
    );
    const need = {
      name: 'planetary-mesh',
      purpose: planetaryMesh.purpose,
      reach: reach.known,
      apart: apart.known,
      last: [],
    };
    return { need, unknown: [...reach.unknown, ...apart.unknown] };
  },
});
