import { measuredLevel } from '../../finding/measure.ts';
import {
  type Answer,
  answer,
  answerOf,
  fromAll,
  level,
  type Sheet,
  type Stated,
  thenAnswer,
} from '../../quantity/index.ts';
import { statics } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { magnetHoldsTo } from '../formulas/magnet-holding.ts';
import type { Prediction } from '../prediction.ts';
import { worstPeak } from '../worst-peak.ts';
import { type Judgement, judged, marginOf, rule } from './rule.ts';

const id = 'chain/magnet-holds';

export const magnetHolds = rule({
  id,
  title: 'The magnet stays where it was put',
  prose:
    'A magnet slides, tips or is thrown off where the motion pulls harder than it holds; paint, curvature and a thin wall ' +
    'take most of its pull. Told only where its pull on this surface is stated.',
  remedy: ['a stronger magnet', 'a lower transducer', 'bare metal under it', 'a stud'],
  sources: [clause(statics)],
  judge: ({ point, prediction }) => {
    const { sheet } = prediction.chain.parts.mount;
    if ((sheet as Sheet).values.pull === undefined) return [];
    const what = 'worst peak on the magnet';
    return judged(
      thenAnswer(held(prediction), ({ acceleration, gives }) =>
        fromAll(
          {
            worst: worstPeak(
              answer({
                name: 'magnet',
                part: sheet.of,
                motion: 'acceleration' as const,
                peak: acceleration,
                gain: () => 1,
              }),
              point.targets,
              point.disturbances,
              [],
            ),
          },
          ({ worst }) => ({ acceleration, gives, peak: worst.peak }),
        ),
      ),
      { rule: id, what },
      ({ acceleration, gives, peak }): readonly Judgement[] => {
        const stays = peak < acceleration;
        return [
          {
            rule: id,
            outcome: stays ? 'meets' : 'fails',
            what,
            found: measuredLevel(level('acceleration', peak, 'peak')),
            limit: measuredLevel(level('acceleration', acceleration, 'peak')),
            margin: peak === 0 ? marginOf(1e6) : marginOf(acceleration / peak),
            ...(stays ? {} : { needs: `a magnet that does not let go: it ${gives} first` }),
          },
        ];
      },
    );
  },
});

function held({ chain }: Prediction): Answer<ReturnType<typeof magnetHoldsTo>> {
  const mount = chain.parts.mount.sheet as Sheet;
  const transducer = chain.parts.transducer.sheet as Sheet;
  const number = (sheet: Sheet, field: string, what: string) =>
    answerOf(sheet.values[field] as Stated<number> | undefined, sheet.of, what);
  return fromAll(
    {
      pull: number(mount, 'pull', 'pull'),
      height: number(mount, 'gravityHeight', 'height of the centre of gravity'),
      foot: number(mount, 'footWidth', 'foot width'),
      friction: number(mount, 'friction', 'friction'),
      own: number(transducer, 'mass', 'mass'),
      added: chain.mount.addedMass,
    },
    ({ own, added, ...magnet }) => magnetHoldsTo({ ...magnet, mass: own + added }),
  );
}
