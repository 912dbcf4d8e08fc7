import { type Answer, ask, countField, fromAll, type Sheet } from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { type ElementLine, machineElementKind } from './element.ts';
import { counted, type FrequencyTerm, turning } from './form.ts';
import { meshOrders } from './mesh-frequencies.ts';
import { equation } from './relation.ts';

const sources = [clause(tradePractice, 'lobes of screw machines and lobe blowers: lobes times speed')];

export const screwRotorsSheet = {
  maleLobes: countField('Lobes of the male rotor', { symbol: 'z_m', example: '4' }),
  femaleLobes: countField('Flutes of the female rotor', { symbol: 'z_f', example: '6' }),
} as const;
export type ScrewRotorsSheet = Sheet<typeof screwRotorsSheet>;

/** Two rotors of a screw compressor, screw pump or lobe blower; timing gears or not, their lobes keep step. */
export const screwRotors = machineElementKind({
  kind: 'screw-rotors',
  name: 'Rotors of a screw machine or lobe blower',
  sheet: screwRotorsSheet,
  places: ['male', 'female'],
  relations: (sheet) =>
    fromAll({ lobes: lobesOf(sheet) }, ({ lobes: { male, female } }) => [
      { words: `${male} lobes turn ${female} flutes`, terms: equation(['male', male], ['female', female]) },
    ]),
  lines: (sheet, place): readonly ElementLine[] => {
    const male = turning(place.shafts.male);
    const line = (
      name: string,
      meaning: string,
      harmonics: number,
      terms: (lobes: Lobes) => readonly FrequencyTerm[],
    ): ElementLine => ({
      name,
      meaning,
      form: fromAll({ lobes: lobesOf(sheet) }, ({ lobes }) => terms(lobes)),
      harmonics,
      sources,
    });
    return [
      line('pocket-pass', 'Pockets opening to the outlet: lobes of the male rotor times its speed', 4, (lobes) => [
        counted(lobes.male, male),
      ]),
      line(
        'pocket-pass-lower',
        'Pocket pass less one turn of the male rotor: one lobe unlike the others',
        1,
        (lobes) => [counted(lobes.male, male), counted(-1, male)],
      ),
      line(
        'pocket-pass-upper',
        'Pocket pass plus one turn of the male rotor: one lobe unlike the others',
        1,
        (lobes) => [counted(lobes.male, male), counted(1, male)],
      ),
      line('hunting-lobe', 'The same lobe meets the same flute again', 1, (lobes) => [
        counted(meshOrders(lobes.male, lobes.female).huntingTooth, male),
      ]),
    ];
  },
  doubts: () => [],
  sources,
});

interface Lobes {
  readonly male: number;
  readonly female: number;
}

function lobesOf(sheet: ScrewRotorsSheet): Answer<Lobes> {
  return ask(sheet, ['maleLobes', 'femaleLobes'], ({ maleLobes: male, femaleLobes: female }) => ({ male, female }));
}
