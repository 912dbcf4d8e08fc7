import {
  type Answer,
  aboveZeroField,
  answer,
  answerIfStated,
  ask,
  curveField,
  fromAll,
  levelField,
  optional,
  quantityField,
  type Sheet,
  textField,
} from '../../quantity/index.ts';
import { type Complex, complex, quotient, scaled, sum } from '../../signal/complex.ts';
import { coilResponse } from '../formulas/moving-coil-response.ts';
import type { Stage } from '../stage.ts';
import { isolatedGain, seriesImpedance, shuntAdmittance } from '../two-port.ts';
import { statedNoise } from './mounted.ts';
import type { Ceiling, TransducerModel } from './transducer-kind.ts';

/** A coil on springs in a magnet, whatever moves its case. */
export const coilSheet = {
  sensitivity: aboveZeroField(
    quantityField('voltage per velocity', 'Open circuit, well above the suspension frequency', {
      symbol: 'S',
      example: '20 mV/(mm/s)',
    }),
  ),
  suspension: aboveZeroField(
    quantityField('frequency', 'Natural frequency of the suspension', { symbol: 'f_0', example: '10 Hz' }),
  ),
  damping: aboveZeroField(quantityField('ratio', 'Damping as used, with its shunt', { symbol: 'ζ', example: '0.68' })),
  usableTo: aboveZeroField(quantityField('frequency', 'Highest frequency of its data sheet', { example: '1000 Hz' })),
  travel: aboveZeroField(levelField(['displacement'], 'Travel of the coil to its stops', { example: '2 mm peak' })),
  noise: curveField('velocity density', 'Noise at the output over the sensitivity'),
  coilResistance: optional(quantityField('resistance', 'Of the coil, at 20 °C', { symbol: 'R_c', example: '600 ohm' })),
  shunt: optional(
    aboveZeroField(
      quantityField('resistance', 'Damping resistor across the coil', { symbol: 'R_s', example: '3300 ohm' }),
    ),
  ),
  movingMass: optional(
    aboveZeroField(
      quantityField('mass', 'Mass that moves on the suspension; with it every load damps the coil as it really does', {
        symbol: 'm',
        example: '20 g',
      }),
    ),
  ),
  openDamping: optional(
    aboveZeroField(
      quantityField('ratio', 'Damping of the open coil, without its shunt', { symbol: 'ζ_o', example: '0.2' }),
    ),
  ),
  orientation: optional(textField('Positions it works in')),
  largestTilt: optional(
    quantityField('angle', 'How far its axis may lean from its position of use', { example: '5 deg' }),
  ),
} as const;

export type CoilSheet = Sheet<typeof coilSheet>;

interface Coil {
  readonly sensitivity: number;
  readonly natural: number;
  /** With the shunt where the mass is not known, without it where it is. */
  readonly damping: number;
  readonly resistance: number;
  readonly shunt: number | undefined;
  readonly mass: number | undefined;
}

function coilOf(sheet: CoilSheet): Answer<Coil> {
  const { values, of } = sheet;
  const free = values.movingMass !== undefined;
  return fromAll(
    {
      stated: ask(sheet, ['sensitivity', 'suspension'], (s) => s),
      damping: free ? ask(sheet, ['openDamping'], (s) => s.openDamping) : ask(sheet, ['damping'], (s) => s.damping),
      // A shunt divides with the coil's own resistance, so beside a shunt or a moving mass that must be known.
      resistance:
        free || values.shunt !== undefined || values.coilResistance !== undefined
          ? ask(sheet, ['coilResistance'], (s) => s.coilResistance as number)
          : answer(0),
      shunt: answerIfStated(values.shunt, of, 'shunt'),
      mass: answerIfStated(values.movingMass, of, 'moving mass'),
    },
    ({ stated, damping, resistance, shunt, mass }) => ({
      sensitivity: stated.sensitivity,
      natural: stated.suspension,
      damping,
      resistance,
      shunt,
      mass,
    }),
  );
}

/** Sensitivity as used: S·R_s/(R_c + R_s) with a shunt, S without. */
function sensitivityAsUsed({ sensitivity, resistance, shunt }: Coil): number {
  return shunt === undefined ? sensitivity : (sensitivity * shunt) / (resistance + shunt);
}

/**
 * The coil as an electrical source: its resistance, and where the moving mass is known G²/Z_m, with Z_m the mechanical
 * impedance j·ω·m + 2·ζ·m·ω₀ + m·ω₀²/(jω) of mass and suspension. Whatever current the shunt, the cable or the input
 * then draws damps the coil: Δζ = G²/(2·m·ω₀·(R_c + R_s)) comes out of it.
 */
function sourceImpedance(coil: Coil, frequency: number): Complex {
  const { sensitivity: G, natural, damping: ζ, resistance, mass: m } = coil;
  if (m === undefined) return complex(resistance, 0);
  const [ω, ω0] = [2 * Math.PI * frequency, 2 * Math.PI * natural];
  const mechanical = complex(2 * ζ * m * ω0, m * ω - (m * ω0 * ω0) / ω);
  return sum(complex(resistance, 0), quotient(complex(G * G, 0), mechanical));
}

function stagesOf(sheet: CoilSheet, coil: Coil): readonly Stage[] {
  const { shunt } = coil;
  const shunted: readonly Stage[] =
    shunt === undefined
      ? []
      : [
          {
            name: 'shunt',
            part: sheet.of,
            enters: 'voltage',
            leaves: 'voltage',
            through: () => shuntAdmittance(complex(1 / shunt, 0)),
          },
        ];
  return [
    {
      name: 'coil on its suspension',
      part: sheet.of,
      enters: 'motion',
      leaves: 'voltage',
      through: (frequency) =>
        isolatedGain(scaled(coilResponse(frequency, coil.natural, coil.damping), coil.sensitivity)),
      noise: statedNoise(sheet, coil.sensitivity),
      features: [coil.natural],
    },
    {
      name: 'coil resistance',
      part: sheet.of,
      enters: 'voltage',
      leaves: 'voltage',
      through: (frequency) => seriesImpedance(sourceImpedance(coil, frequency)),
    },
    ...shunted,
  ];
}

/** Travel of a coil to its stops: a displacement of the case, whatever the frequency. */
export function travelCeiling(sheet: Sheet<Pick<typeof coilSheet, 'travel'>>): Answer<Ceiling> {
  return ask(sheet, ['travel'], (s) => ({
    name: 'coil travel',
    part: sheet.of,
    motion: 'displacement' as const,
    peak: s.travel.value,
    gain: () => 1,
  }));
}

/** What every transducer with such a coil shares: how it answers, to where, and what upsets it. */
export function coilModel(
  sheet: CoilSheet,
): Pick<
  TransducerModel,
  'sensitivity' | 'stages' | 'usableTo' | 'ceilings' | 'disturbedByField' | 'largestTilt' | 'assumptions'
> {
  const coil = coilOf(sheet);
  const { largestTilt, coilResistance, movingMass } = sheet.values;
  return {
    sensitivity: fromAll({ coil }, (known) => sensitivityAsUsed(known.coil)),
    stages: fromAll({ coil }, (known) => stagesOf(sheet, known.coil)),
    usableTo: ask(sheet, ['usableTo'], (s) => s.usableTo as number),
    ceilings: [travelCeiling(sheet)],
    disturbedByField: true,
    ...(largestTilt === undefined ? {} : { largestTilt: ask(sheet, ['largestTilt'], (s) => s.largestTilt as number) }),
    assumptions: [
      'The coil travels as far as the case moves, which holds above the suspension frequency and errs to the pessimistic side below it; it hangs in the middle of its travel.',
      ...(coilResistance === undefined
        ? ['The coil resistance is not stated: its loading by cable and input is left out.']
        : movingMass === undefined
          ? ['The moving mass is not stated: what cable and input add to the damping is left out.']
          : []),
    ],
  };
}
