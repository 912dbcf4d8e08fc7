import { type Finding, finding } from '../../finding/finding.ts';
import {
  choiceField,
  type Dimension,
  type Field,
  meaningWith,
  numberField,
  pointDecimals,
  quantityField,
  Refusal,
  showNumber,
  showQuantity,
} from '../../quantity/index.ts';
import { leadingNumber } from '../../quantity/number.ts';
import { optional } from '../../quantity/stated.ts';
import { leakTesting } from '../../source/leak-testing.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { gasConversionField, gasRatio, leakFlows, showGasConversion } from './leak-gas.ts';

/** The temperature at which a standard volume is counted, 0 °C in kelvin. */
const standardTemperature = 273.15;

/** A leak as pressure times volume per time, and whether the volume is one at 0 °C. */
export interface LeakUnit {
  readonly unit: string;
  readonly standard: boolean;
}

export interface LeakRate extends LeakUnit {
  /** In Pa·m³/s, of the gas as it is, or at 0 °C where the unit is a standard one. */
  readonly value: number;
}

const examples = "'mbar l/s', 'Pa m3/s', 'atm cm3/s std'";

/** Pressure · volume / time, which is also that of a power: a unit of a leak rate must name its pressure. */
const throughput: Dimension = [2, 1, -3, 0, 0, 0];
const pressures = /Pa|bar|atm|Torr|psi/;

/** The unit alone, and whether it counts standard volumes: `atm cm3/s std`, `std cm3/min`, `sccm`. */
function leakUnitOf(written: string): LeakUnit & { readonly factor: number } {
  const text = written
    .trim()
    .replace(/^sccm$/i, 'std cm3/min')
    .replace(/\bcc\b/g, 'cm3');
  const standard = /(^|\s)(std|standard)(?=\s|$)/i.test(text);
  const bare = text.replace(/(^|\s)(std|standard)(?=\s|$)/i, ' ').trim();
  const unit = standard && !pressures.test(bare) ? `atm ${bare}` : bare;
  const meaning = pressures.test(unit) ? meaningWith(unit, throughput) : undefined;
  if (meaning !== undefined) return { unit, standard, factor: meaning.factor };
  throw new Refusal({ read: written, expected: `a unit of leak rate, pressure times volume per time: ${examples}` });
}

function leakRateOf(text: string): LeakRate {
  const expected = `a leak rate such as '1e-6 mbar l/s'`;
  const { value, rest } = leadingNumber(text, expected, pointDecimals);
  if (value < 0) throw new Refusal({ read: text, expected, suggestion: 'No leak rate is below zero.' });
  const { unit, standard, factor } = leakUnitOf(rest);
  return { value: value * factor, unit, standard };
}

function inOwnUnit(rate: LeakRate): number {
  return rate.value / leakUnitOf(rate.unit).factor;
}

function leakRateField(meaning: string, symbol: string): Field<LeakRate> {
  const expected = `a leak rate with its unit: ${examples} or the like`;
  return {
    type: 'quantity',
    meaning,
    symbol,
    expected,
    example: '1e-6 mbar l/s',
    schema: { type: 'string', description: `${meaning} (${expected})` },
    read: (raw) => {
      if (typeof raw !== 'string') throw new Refusal({ read: String(raw), expected });
      return leakRateOf(raw);
    },
    show: (value, showing) => `${showNumber(inOwnUnit(value), showing?.digits, showing?.decimal)} ${unitWords(value)}`,
    json: (value) => ({
      value: value.value,
      unit: 'Pa*m3/s',
      ...(value.standard ? { at: '0 °C' } : {}),
      shown: `${showNumber(inOwnUnit(value))} ${unitWords(value)}`,
      asked: { value: inOwnUnit(value), in: unitWords(value) },
    }),
  };
}

function unitWords({ unit, standard }: LeakUnit): string {
  const spelled = unit.replace(/3/g, '³').replace(/[ *]/g, '·');
  return standard ? `${spelled} (standard, 0 °C)` : spelled;
}

const unitField: Field<LeakUnit> = {
  type: 'text',
  symbol: 'u',
  meaning: 'Unit asked for',
  expected: `a unit of leak rate: ${examples} or the like`,
  example: 'Pa m3/s',
  schema: { type: 'string', description: 'Unit asked for', examples: ['Pa m3/s', 'atm cm3/s std'] },
  read: (raw) => {
    if (typeof raw !== 'string') throw new Refusal({ read: String(raw), expected: unitField.expected });
    const { unit, standard } = leakUnitOf(raw);
    return { unit, standard };
  },
  show: unitWords,
  json: unitWords,
};

/** pV at T counted as a volume at 0 °C, or back: 273.15 K/T, T/273.15 K, or 1 where both are counted alike. */
export function standardVolumes(from: boolean, to: boolean, temperature: number | undefined): number {
  if (from === to || temperature === undefined) return 1;
  return to ? standardTemperature / temperature : temperature / standardTemperature;
}

export const leakRate = working({
  name: 'leak-rate',
  title: 'Leak rate in another unit, and only on request of another gas',
  inputs: {
    from: leakRateField('Leak rate as measured or stated', 'Q'),
    gas: optional(gasConversionField),
    flow: optional(
      choiceField(leakFlows, 'How the gas flows through the leak; needed where the gas changes', { symbol: 'flow' }),
    ),
    temperature: optional(
      quantityField('temperature', 'Temperature of the gas, for units that count volumes at 0 °C', {
        symbol: 'T',
        example: '20 °C',
      }),
    ),
    to: unitField,
  },
  outputs: {
    gasFactor: output(
      numberField('Ratio of the gases: √(M_1/M_2) in molecular flow, η_1/η_2 in viscous flow, 1 for the same gas', {
        symbol: 'k',
      }),
      'k = ratio of the gases',
    ),
    volumeFactor: output(
      numberField('Volumes counted at 0 °C: 273.15 K/T, its reciprocal backwards, else 1', { symbol: 'c' }),
      'c = ratio of the volumes',
    ),
    result: output(leakRateField('Leak rate as asked for', 'Q_2'), 'Q_2 = Q · k · c'),
  },
  holds:
    'the same leak at the same pressures. Molecular flow is that of small leaks, below about 1e-5 mbar·l/s, into vacuum; ' +
    'viscous flow that of large ones near atmosphere, and goes with the difference of the squares of the pressures. ' +
    'Without a temperature, volumes at 0 °C and at the temperature of the gas are taken as one.',
  sources: [clause(leakTesting, 'units', 'computed here'), clause(leakTesting, 'molecular and viscous flow')],
  evaluate: ({ from, gas, flow, temperature, to }) => {
    const gasFactor = gas === undefined ? 1 : gasRatio(gas, flow);
    const volumeFactor = standardVolumes(from.standard, to.standard, temperature);
    return { gasFactor, volumeFactor, result: { ...to, value: from.value * gasFactor * volumeFactor } };
  },
  doubts: ({ from, gas, temperature, to }) => [
    ...(gas === undefined ? [gasNotStated()] : []),
    ...(from.standard !== to.standard && temperature === undefined ? [volumesTakenAsOne()] : []),
    ...(gas?.to === undefined || gas.to === gas.from ? [] : [converted(showGasConversion(gas))]),
  ],
  example: { from: '1e-6 mbar l/s', gas: 'helium', temperature: '20 °C', to: 'atm cm3/s std' },
});

function gasNotStated(): Finding {
  return finding({
    rule: 'leak/gas-not-stated',
    weight: 'notes',
    at: 'leak-rate/gas',
    found: 'no gas stated',
    limit: 'the gas of the test',
    because: 'The unit is converted and nothing else: the result is of whatever gas the leak was measured with.',
    remedy: ['state the gas; a limit for helium is not one for air'],
    sources: [],
  });
}

function volumesTakenAsOne(): Finding {
  return finding({
    rule: 'leak/volume-temperature',
    weight: 'notes',
    at: 'leak-rate/temperature',
    found: 'no temperature stated',
    limit: 'the temperature of the gas',
    because: `At 20 °C a volume is ${showNumber(293.15 / standardTemperature, 4)} times what it is at ${showQuantity('temperature', standardTemperature)}; here both are taken as one.`,
    remedy: ['state the temperature of the gas'],
    sources: [],
  });
}

function converted(words: string): Finding {
  return finding({
    rule: 'leak/gas-converted',
    weight: 'warns',
    at: 'leak-rate/gas',
    found: words,
    limit: 'a test with the gas that matters',
    because: 'A leak is neither purely molecular nor purely viscous; the ratio is an estimate, not a measurement.',
    remedy: ['test with the gas that matters', 'show both flows, and take the worse'],
    sources: [clause(leakTesting, 'molecular and viscous flow')],
  });
}
