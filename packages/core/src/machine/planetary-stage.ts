import {
  type Answer,
  ask,
  choiceField,
  countField,
  flagField,
  fraction,
  fromAll,
  multiplied,
  one,
  optional,
  quantityField,
  type Sheet,
  valueIfStated,
} from '../quantity/index.ts';
import { planetaryKinematics } from '../source/planetary-kinematics.ts';
import { planetaryPhasing } from '../source/planetary-phasing.ts';
import { clause } from '../source/source.ts';
import { type ElementLine, type ElementPlace, machineElementKind } from './element.ts';
import { counted, type FrequencySource, type FrequencyTerm, fixed, turningBetween } from './form.ts';
import {
  meetingShare,
  ordersAtRing,
  type PlanetaryTeeth,
  planetWindow,
  willisFactors,
} from './planetary-frequencies.ts';
import { equation } from './relation.ts';
import { planetaryGeometry } from './rules/planetary-geometry.ts';
import { planetaryRatio } from './rules/planetary-ratio.ts';
import { planetsAssemble } from './rules/planets-assemble.ts';

const sources = [clause(planetaryKinematics)];
const phasing = [clause(planetaryPhasing)];

export const planetaryStageSheet = {
  sunTeeth: countField('Teeth of the sun', { symbol: 'z_s', least: 2, example: '21' }),
  planetTeeth: countField('Teeth of a planet', { symbol: 'z_p', least: 2, example: '39' }),
  ringTeeth: countField('Teeth of the ring', { symbol: 'z_r', least: 2, example: '99' }),
  planets: countField('Planets', { symbol: 'N', example: '3' }),
  spacing: optional(choiceField(['equal', 'unequal'], 'Angles between the planets; equal where left out')),
  profileShift: optional(
    flagField('Whether profile shift lets the ring differ from sun plus two planets by a tooth or three'),
  ),
  ratio: optional(
    quantityField('ratio', 'Ratio as stated elsewhere: the faster of the two moving members over the slower', {
      example: '5.714',
    }),
  ),
} as const;
export type PlanetaryStageSheet = Sheet<typeof planetaryStageSheet>;

type Place = ElementPlace<'sun' | 'carrier' | 'ring', 'planet'>;

/**
 * Sun, planets on a carrier, ring: any of the three held, or none. A shaft named for the planets carries their
 * bearings: inner ring on the carrier, outer ring on the planet.
 */
export const planetaryStage = machineElementKind({
  kind: 'planetary-stage',
  name: 'Planetary stage',
  sheet: planetaryStageSheet,
  places: ['sun', 'carrier', 'ring'],
  carriedPlaces: ['planet'],
  mayBeFixed: ['sun', 'carrier', 'ring'],
  relations: (sheet) =>
    fromAll({ teeth: teethOf(sheet) }, ({ teeth }) => {
      const { sun, carrier, ring } = willisFactors(teeth);
      return [
        {
          words: `sun ${teeth.sun} and ring ${teeth.ring} teeth round one carrier`,
          terms: equation(['sun', sun], ['carrier', carrier], ['ring', ring]),
        },
        {
          words: `planets of ${teeth.planet} teeth roll on a sun of ${teeth.sun}`,
          terms: equation(['planet', teeth.planet], ['sun', teeth.sun], ['carrier', -(teeth.planet + teeth.sun)]),
        },
      ];
    }),
  lines: (sheet, place) => [...meshLines(sheet, place), ...faultLines(sheet, place), ...ringLines(sheet, place)],
  doubts: (sheet, speeds) => [
    ...planetaryGeometry.check(sheet),
    ...planetsAssemble.check(sheet),
    ...planetaryRatio.check(sheet, speeds),
  ],
  sources,
});

export function teethOf(sheet: PlanetaryStageSheet): Answer<PlanetaryTeeth> {
  return ask(
    sheet,
    ['sunTeeth', 'planetTeeth', 'ringTeeth', 'planets'],
    ({ sunTeeth: sun, planetTeeth: planet, ringTeeth: ring, planets }) => ({ sun, planet, ring, planets }),
  );
}

type Terms = (teeth: PlanetaryTeeth) => readonly FrequencyTerm[];

function line(sheet: PlanetaryStageSheet, name: string, meaning: string, harmonics: number, terms: Terms): ElementLine {
  return { name, meaning, form: fromAll({ teeth: teethOf(sheet) }, ({ teeth }) => terms(teeth)), harmonics, sources };
}

function sunOnCarrier({ shafts }: Place): FrequencySource {
  return turningBetween(shafts.sun, shafts.carrier);
}

function carrierOnRing({ shafts }: Place): FrequencySource {
  return turningBetween(shafts.carrier, shafts.ring);
}

/** The mesh, and what modulates it. */
function meshLines(sheet: PlanetaryStageSheet, place: Place): readonly ElementLine[] {
  const mesh = ({ ring }: PlanetaryTeeth) => counted(ring, carrierOnRing(place));
  const turnOf = {
    carrier: () => one,
    sun: () => one,
    planet: ({ ring, planet }: PlanetaryTeeth) => fraction(ring, planet),
  };
  const beside = (whose: keyof typeof turnOf, of: FrequencySource, why: string) =>
    ([-1, 1] as const).map((sign) =>
      line(
        sheet,
        `mesh-${sign < 0 ? 'lower' : 'upper'}-${whose}`,
        `Mesh ${sign < 0 ? 'less' : 'plus'} one turn of ${why}`,
        1,
        (teeth) => [mesh(teeth), counted(multiplied(fraction(sign), turnOf[whose](teeth)), of)],
      ),
    );
  return [
    line(sheet, 'mesh', 'Tooth mesh: ring teeth times the turns of the carrier against the ring', 5, (teeth) => [
      mesh(teeth),
    ]),
    ...beside('carrier', carrierOnRing(place), 'the carrier: planets of unlike size or load, a bent carrier'),
    ...beside('sun', sunOnCarrier(place), 'the sun against the carrier: its eccentricity or one bad tooth'),
    ...beside('planet', carrierOnRing(place), 'a planet against the carrier: its eccentricity or one bad tooth'),
  ];
}

function faultLines(sheet: PlanetaryStageSheet, place: Place): readonly ElementLine[] {
  const planetTurn =
    (times: number): Terms =>
    ({ ring, planet }) => [counted(fraction(times * ring, planet), carrierOnRing(place))];
  return [
    line(
      sheet,
      'planet-spin',
      'One turn of a planet as the carrier sees it; its bearing turns at this',
      2,
      planetTurn(1),
    ),
    line(
      sheet,
      'sun-fault',
      'A bad tooth of the sun meets every planet once per turn against the carrier',
      3,
      (teeth) => [counted(teeth.planets, sunOnCarrier(place))],
    ),
    line(sheet, 'planet-fault', 'A bad planet tooth meets sun and ring: both flanks', 3, planetTurn(2)),
    line(sheet, 'planet-fault-one-flank', 'A bad flank of a planet tooth meets sun or ring', 3, planetTurn(1)),
    line(sheet, 'ring-fault', 'A bad tooth of the ring meets every planet that passes', 3, (teeth) => [
      counted(teeth.planets, carrierOnRing(place)),
    ]),
    line(
      sheet,
      'hunting-planet-ring',
      'The same planet tooth meets the same ring tooth again: the window of an average',
      1,
      (teeth) => [counted(fraction(1, planetWindow(teeth)), carrierOnRing(place))],
    ),
    line(
      sheet,
      'hunting-sun-planet',
      'The same tooth of the sun meets the same tooth of one planet again',
      1,
      (teeth) => {
        const share = multiplied(fraction(teeth.sun), meetingShare(teeth.planet, teeth.sun));
        return [counted(share, sunOnCarrier(place))];
      },
    ),
  ];
}

/** What a transducer on a held ring sees of planets that pass it. */
function ringLines(sheet: PlanetaryStageSheet, place: Place): readonly ElementLine[] {
  if (place.shafts.ring !== fixed || place.shafts.carrier === fixed) return [];
  const pass = line(
    sheet,
    'planet-pass',
    'Planets passing a place on the ring: side lines of the mesh there are whole numbers of this from zero',
    2,
    ({ planets }) => [counted(planets, carrierOnRing(place))],
  );
  const teeth = teethOf(sheet);
  if (!teeth.known || valueIfStated(sheet.values.spacing) === 'unequal') return [pass];
  const lines = [1, 2, 3].flatMap((harmonic) => {
    const mesh = harmonic * teeth.value.ring;
    return ordersAtRing(teeth.value, harmonic)
      .filter((order) => order !== mesh)
      .map((order): ElementLine => {
        const of = harmonic === 1 ? 'the mesh' : `${harmonic} × the mesh`;
        return {
          ...line(
            sheet,
            `${harmonic === 1 ? '' : `${harmonic}-times-`}mesh-at-ring-${order < mesh ? 'lower' : 'upper'}`,
            `Where ${of} stands out at one place of the ring: ${order} of the carrier, the multiple of ${teeth.value.planets} nearest to ${mesh}, which itself nearly cancels among equal planets`,
            1,
            () => [counted(order, carrierOnRing(place))],
          ),
          sources: phasing,
        };
      });
  });
  return [pass, ...lines];
}
