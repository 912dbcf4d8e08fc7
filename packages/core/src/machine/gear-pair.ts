import {
  type Answer,
  ask,
  choiceField,
  countField,
  fromAll,
  optional,
  quantityField,
  type Sheet,
  valueIfStated,
} from '../quantity/index.ts';
import { gearFrequencies } from '../source/gear-frequencies.ts';
import { clause } from '../source/source.ts';
import { type ElementLine, type ElementPlace, machineElementKind } from './element.ts';
import { counted, type FrequencySource, type FrequencyTerm, turning } from './form.ts';
import { meshOrders, toothPair } from './mesh-frequencies.ts';
import { equation } from './relation.ts';
import { commonFactor } from './rules/common-factor.ts';
import { ratioAgainstTeeth } from './rules/ratio-against-teeth.ts';

const sources = [clause(gearFrequencies)];

export const gearPairSheet = {
  drivingTeeth: countField('Teeth of the driving wheel, on the shaft `from`', {
    symbol: 'z_1',
    least: 2,
    example: '24',
  }),
  drivenTeeth: countField('Teeth of the driven wheel, on the shaft `to`', { symbol: 'z_2', least: 2, example: '84' }),
  meshing: optional(
    choiceField(
      ['external', 'internal', 'bevel'],
      'Whether both wheels have outward teeth, or stand at an angle; external where left out',
    ),
  ),
  ratio: optional(
    quantityField('ratio', 'Ratio as stated elsewhere, speed of the driving over speed of the driven', {
      example: '3.5',
    }),
  ),
} as const;
export type GearPairSheet = Sheet<typeof gearPairSheet>;

/**
 * Two meshing wheels on shafts that do not move about each other: spur, helical, bevel. The sense of a bevel wheel about
 * its own axis is a convention.
 */
export const gearPair = machineElementKind({
  kind: 'gear-pair',
  name: 'Gear pair',
  sheet: gearPairSheet,
  places: ['from', 'to'],
  relations: (sheet) =>
    fromAll({ teeth: teethOf(sheet) }, ({ teeth: { z1, z2 } }) => {
      const internal = valueIfStated(sheet.values.meshing) === 'internal';
      return [{ words: `${z1} teeth drive ${z2}`, terms: equation(['from', z1], ['to', internal ? -z2 : z2]) }];
    }),
  lines: (sheet, place) => {
    const teeth = teethOf(sheet);
    return [
      line('mesh', 'Tooth mesh: teeth times speed', teeth, 3, ({ z1 }) => [counted(z1, turning(place.shafts.from))]),
      ...sideLines('driving', turning(place.shafts.from), teeth, place),
      ...sideLines('driven', turning(place.shafts.to), teeth, place),
      line('hunting-tooth', 'The same two teeth meet again: mesh · N_A/(z_1·z_2)', teeth, 1, ({ z1, z2 }) => [
        counted(meshOrders(z1, z2).huntingTooth, turning(place.shafts.from)),
      ]),
      ...assemblyPhase(teeth, place),
    ];
  },
  doubts: (sheet, speeds) => [...ratioAgainstTeeth.check(sheet, speeds), ...commonFactor.check(sheet, speeds)],
  sources,
});

interface Teeth {
  readonly z1: number;
  readonly z2: number;
}

function teethOf(sheet: GearPairSheet): Answer<Teeth> {
  return ask(sheet, ['drivingTeeth', 'drivenTeeth'], ({ drivingTeeth: z1, drivenTeeth: z2 }) => ({ z1, z2 }));
}

function line(
  name: string,
  meaning: string,
  teeth: Answer<Teeth>,
  harmonics: number,
  terms: (known: Teeth) => readonly FrequencyTerm[],
): ElementLine {
  return { name, meaning, form: fromAll({ teeth }, (known) => terms(known.teeth)), harmonics, sources };
}

/** The mesh modulated once per turn of one wheel: an eccentric wheel, a cracked or broken tooth. */
function sideLines(
  wheel: 'driving' | 'driven',
  speed: FrequencySource,
  teeth: Answer<Teeth>,
  place: ElementPlace<'from' | 'to'>,
): readonly ElementLine[] {
  return ([-1, 1] as const).map((sign) =>
    line(
      `mesh-${sign < 0 ? 'lower' : 'upper'}-${wheel}`,
      `Mesh ${sign < 0 ? 'less' : 'plus'} one turn of the ${wheel} wheel: its eccentricity or one bad tooth`,
      teeth,
      1,
      ({ z1 }) => [counted(z1, turning(place.shafts.from)), counted(sign, speed)],
    ),
  );
}

/** Stands apart from the mesh only where the tooth counts share a factor. */
function assemblyPhase(teeth: Answer<Teeth>, place: ElementPlace<'from' | 'to'>): readonly ElementLine[] {
  if (!teeth.known || toothPair(teeth.value.z1, teeth.value.z2).phases === 1) return [];
  return [
    line('assembly-phase', 'Assembly phase: mesh / N_A, wear in groups of teeth', teeth, 1, ({ z1, z2 }) => [
      counted(meshOrders(z1, z2).assemblyPhase, turning(place.shafts.from)),
    ]),
  ];
}
