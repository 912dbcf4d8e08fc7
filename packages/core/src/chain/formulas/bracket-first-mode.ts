import {
  aboveZeroField,
  choiceField,
  type Frequency,
  numberField,
  optional,
  quantityField,
  Refusal,
  si,
} from '../../quantity/index.ts';
import { beamTextbook } from '../../source/beam-textbook.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/** Elastic modulus and density, SI, of the usual piece. */
const materials = {
  steel: { modulus: 205e9, density: 7850 },
  'stainless steel': { modulus: 195e9, density: 7950 },
  aluminium: { modulus: 70e9, density: 2700 },
  'cast iron': { modulus: 110e9, density: 7200 },
} as const;
export type BracketMaterial = keyof typeof materials;
export const bracketMaterials = Object.keys(materials) as readonly BracketMaterial[];

/** Share of its first mode up to which a bracket is followed: the response stays within 10 % of one. */
export const usableShareOfBracket = 0.3;

export interface Bracket {
  /** Metres, from the clamped end to the end mass. */
  readonly length: number;
  readonly width: number;
  /** Metres, in the direction in which it bends. */
  readonly thickness: number;
  readonly modulus: number;
  readonly density: number;
  /** Kilograms at its free end. */
  readonly endMass: number;
}

/**
 * First bending mode of a bracket clamped at one end, in hertz: f = λ²/(2π)·√(E·I/(m_b·L³)), with λ the first root of
 * 1 + cos λ·cosh λ + μ·λ·(cos λ·sinh λ − sin λ·cosh λ) = 0, μ = m_e/m_b, I = b·h³/12, beam mass m_b = ρ·b·h·L. The clamp
 * is taken as rigid and the end mass as a point, so the true mode lies lower. Source: any textbook of beams.
 */
export function bracketFirstMode(bracket: Bracket): Frequency {
  const { length: L, width: b, thickness: h, modulus: E, density: rho, endMass } = bracket;
  aboveZero({ length: L, width: b, thickness: h, modulus: E, density: rho });
  const beam = rho * b * h * L;
  const root = firstRoot(endMass / beam);
  const secondMoment = (b * h ** 3) / 12;
  return si('frequency', (root ** 2 / (2 * Math.PI)) * Math.sqrt((E * secondMoment) / (beam * L ** 3)));
}

/** The first root by bisection; without an end mass it is 1.8751, and it falls to zero as the mass grows. */
function firstRoot(massRatio: number): number {
  const at = (x: number) =>
    1 + Math.cos(x) * Math.cosh(x) + massRatio * x * (Math.cos(x) * Math.sinh(x) - Math.sin(x) * Math.cosh(x));
  let [low, high] = [0, 1.9];
  for (let step = 0; step < 80; step++) {
    const middle = (low + high) / 2;
    if (at(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export const bracketFirstModeWorking = working({
  name: 'bracket-first-mode',
  title: 'First mode of a bracket with a transducer at its end',
  inputs: {
    length: aboveZeroField(
      quantityField('length', 'From the clamped end to the transducer', { symbol: 'L', example: '100 mm' }),
    ),
    width: aboveZeroField(quantityField('length', 'Width', { symbol: 'b', example: '40 mm' })),
    thickness: aboveZeroField(
      quantityField('length', 'Thickness, in the direction in which it bends', { symbol: 'h', example: '10 mm' }),
    ),
    material: optional(choiceField(bracketMaterials, 'Material; or its modulus and density', { example: 'steel' })),
    modulus: optional(
      aboveZeroField(quantityField('elastic modulus', 'Elastic modulus', { symbol: 'E', example: '205 GPa' })),
    ),
    density: optional(aboveZeroField(quantityField('density', 'Density', { symbol: 'ρ', example: '7850 kg/m3' }))),
    endMass: quantityField('mass', 'Transducer and mount at its end', { symbol: 'm_e', example: '150 g' }),
  },
  outputs: {
    modulusTaken: output(
      quantityField('elastic modulus', 'Elastic modulus as stated, or of the material', { symbol: 'E' }),
      'E = as stated, or looked up',
    ),
    densityTaken: output(
      quantityField('density', 'Density as stated, or of the material', { symbol: 'ρ' }),
      'ρ = as stated, or looked up',
    ),
    beamMass: output(quantityField('mass', 'Mass of the bracket itself', { symbol: 'm_b' }), 'm_b = ρ · b · h · L'),
    root: output(
      numberField('First root', { symbol: 'λ' }),
      'λ = first root of 1 + cos λ cosh λ + (m_e/m_b) λ (cos λ sinh λ − sin λ cosh λ)',
    ),
    firstMode: output(
      quantityField('frequency', 'First bending mode', { symbol: 'f_1' }),
      'f_1 = λ^2/(2π) · √(E · b · h^3/(12 · m_b · L^3))',
    ),
    usableTo: output(
      quantityField('frequency', 'Up to where the bracket follows', { symbol: 'f_u' }),
      'f_u = 0.3 · f_1',
    ),
  },
  holds:
    'a slender bracket of even section, rigidly clamped, its end mass a point at its end: an upper estimate. Bolts, a ' +
    'thin wall and a tall transducer lower it; a tap tells.',
  sources: [clause(beamTextbook), clause(tradePractice, 'a bracket is used up to 0.3 of its first mode')],
  evaluate: ({ length, width, thickness, material, modulus, density, endMass }) => {
    const known = material === undefined ? undefined : materials[material];
    const E = modulus ?? known?.modulus;
    const rho = density ?? known?.density;
    if (E === undefined || rho === undefined) {
      throw new Refusal({ read: '', expected: "'material', or both 'modulus' and 'density'" });
    }
    const bracket = { length, width, thickness, modulus: E, density: rho, endMass };
    const beamMass = rho * width * thickness * length;
    const firstMode = bracketFirstMode(bracket);
    return {
      modulusTaken: si('elastic modulus', E),
      densityTaken: si('density', rho),
      beamMass: si('mass', beamMass),
      root: firstRoot(endMass / beamMass),
      firstMode,
      usableTo: si('frequency', usableShareOfBracket * firstMode),
    };
  },
  example: { length: '100 mm', width: '40 mm', thickness: '10 mm', material: 'steel', 'end-mass': '150 g' },
});
