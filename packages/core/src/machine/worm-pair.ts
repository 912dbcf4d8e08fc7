import { type Answer, ask, countField, fromAll, optional, quantityField, type Sheet } from '../quantity/index.ts';
import { gearFrequencies } from '../source/gear-frequencies.ts';
import { clause } from '../source/source.ts';
import { type ElementLine, machineElementKind } from './element.ts';
import { counted, type FrequencyTerm, turning } from './form.ts';
import { meshOrders } from './mesh-frequencies.ts';
import { equation } from './relation.ts';
import { wormRatio } from './rules/worm-ratio.ts';

const sources = [clause(gearFrequencies)];

export const wormPairSheet = {
  starts: countField('Starts of the worm: its threads', { symbol: 'z_1', example: '2' }),
  wheelTeeth: countField('Teeth of the worm wheel', { symbol: 'z_2', least: 2, example: '41' }),
  ratio: optional(
    quantityField('ratio', 'Ratio as stated elsewhere, speed of the worm over speed of the wheel', { example: '20.5' }),
  ),
} as const;
export type WormPairSheet = Sheet<typeof wormPairSheet>;

/** Worm and wheel on crossed axes. The sense of the wheel is a convention: it depends on the hand of the worm. */
export const wormPair = machineElementKind({
  kind: 'worm-pair',
  name: 'Worm and wheel',
  sheet: wormPairSheet,
  places: ['worm', 'wheel'],
  relations: (sheet) =>
    fromAll({ counts: countsOf(sheet) }, ({ counts: { starts, teeth } }) => [
      {
        words: `a worm of ${starts} starts drives ${teeth} teeth`,
        terms: equation(['worm', starts], ['wheel', -teeth]),
      },
    ]),
  lines: (sheet, place): readonly ElementLine[] => {
    const worm = turning(place.shafts.worm);
    const wheel = turning(place.shafts.wheel);
    const line = (
      name: string,
      meaning: string,
      harmonics: number,
      terms: (counts: Counts) => readonly FrequencyTerm[],
    ): ElementLine => ({
      name,
      meaning,
      form: fromAll({ counts: countsOf(sheet) }, ({ counts }) => terms(counts)),
      harmonics,
      sources,
    });
    return [
      line('mesh', 'Tooth mesh: starts times the speed of the worm', 4, ({ starts }) => [counted(starts, worm)]),
      line(
        'mesh-lower-wheel',
        'Mesh less one turn of the wheel: its eccentricity or one bad tooth',
        1,
        ({ starts }) => [counted(starts, worm), counted(-1, wheel)],
      ),
      line(
        'mesh-upper-wheel',
        'Mesh plus one turn of the wheel: its eccentricity or one bad tooth',
        1,
        ({ starts }) => [counted(starts, worm), counted(1, wheel)],
      ),
      line('hunting-tooth', 'The same thread meets the same tooth again', 1, ({ starts, teeth }) => [
        counted(meshOrders(starts, teeth).huntingTooth, worm),
      ]),
    ];
  },
  doubts: (sheet) => wormRatio.check(sheet),
  sources,
});

interface Counts {
  readonly starts: number;
  readonly teeth: number;
}

function countsOf(sheet: WormPairSheet): Answer<Counts> {
  return ask(sheet, ['starts', 'wheelTeeth'], ({ starts, wheelTeeth: teeth }) => ({ starts, teeth }));
}
