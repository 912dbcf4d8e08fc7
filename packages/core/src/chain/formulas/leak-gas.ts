import { type Field, nearest, Refusal } from '../../quantity/index.ts';

/** Molar mass in kg/mol and viscosity in Pa·s at 20 °C, from memory. */
const gases = {
  helium: { molarMass: 4.0026e-3, viscosity: 19.6e-6 },
  hydrogen: { molarMass: 2.016e-3, viscosity: 8.8e-6 },
  air: { molarMass: 28.96e-3, viscosity: 18.2e-6 },
  nitrogen: { molarMass: 28.013e-3, viscosity: 17.6e-6 },
  argon: { molarMass: 39.95e-3, viscosity: 22.3e-6 },
} as const;

export type Gas = keyof typeof gases;
const names = Object.keys(gases) as Gas[];

/** The gas a leak rate is of, and the gas it is asked for where that is another. */
export interface GasConversion {
  readonly from: Gas;
  readonly to?: Gas;
}

/** How a gas goes through a leak: molecule by molecule, or as a stream. */
export const leakFlows = ['molecular', 'viscous'] as const;
export type LeakFlow = (typeof leakFlows)[number];

function gasCalled(text: string, expected: string): Gas {
  const found = names.find((name) => name === text.trim().toLowerCase());
  if (found !== undefined) return found;
  const near = nearest(text, names);
  throw new Refusal({
    read: text,
    expected,
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}

const expected = `a gas (${names.join(', ')}), or two where another is asked for: 'helium to air'`;

export const gasConversionField: Field<GasConversion> = {
  type: 'text',
  symbol: 'gas',
  meaning: "The gas of the leak rate; 'helium to air' where the rate of another gas is asked for",
  expected,
  example: 'helium',
  schema: { type: 'string', description: expected, examples: ['helium', 'helium to air'] },
  read: (raw) => {
    if (typeof raw !== 'string') throw new Refusal({ read: String(raw), expected });
    const [from, to, more] = raw.split(/\s+to\s+|\s*(?:→|->)\s*/);
    if (from === undefined || more !== undefined) throw new Refusal({ read: raw, expected });
    return to === undefined
      ? { from: gasCalled(from, expected) }
      : { from: gasCalled(from, expected), to: gasCalled(to, expected) };
  },
  show: (value) => showGasConversion(value),
  json: (value) => value,
};

/** `air to helium`, or the one gas alone where none is asked for. */
export function showGasConversion({ from, to }: GasConversion): string {
  return to === undefined ? from : `${from} to ${to}`;
}

/**
 * Rate of the gas asked for over that of the gas measured, through one leak at the same pressures: √(M₁/M₂) in molecular
 * flow, η₁/η₂ in viscous flow, 1 where it is one gas. Refuses to choose between the two where nobody said which it is.
 */
export function gasRatio({ from, to }: GasConversion, flow: LeakFlow | undefined): number {
  if (to === undefined || to === from) return 1;
  const [first, second] = [gases[from], gases[to]];
  if (flow === 'molecular') return Math.sqrt(first.molarMass / second.molarMass);
  if (flow === 'viscous') return first.viscosity / second.viscosity;
  throw new Refusal({
    read: `gas="${from} to ${to}"`,
    expected: "'flow', molecular or viscous: the ratio of two gases is another in each",
    suggestion: `Molecular it is ${Math.sqrt(first.molarMass / second.molarMass).toPrecision(3)}, viscous ${(first.viscosity / second.viscosity).toPrecision(3)}.`,
  });
}
