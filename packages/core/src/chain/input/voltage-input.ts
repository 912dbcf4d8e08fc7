import {
  type Answer,
  aboveZeroField,
  answer,
  answerIfStated,
  ask,
  countField,
  curveField,
  fromAll,
  optional,
  quantityField,
  type Sheet,
  textField,
} from '../../quantity/index.ts';
import { complex, oneComplex } from '../../signal/complex.ts';
import { highPass } from '../../signal/filters.ts';
import { densityAt } from '../formulas/noise.ts';
import type { Stage } from '../stage.ts';
import { isolatedGain, shuntAdmittance } from '../two-port.ts';

/** Fields of every input that digitises a voltage. */
export const voltageInputSheet = {
  rangePeak: aboveZeroField(
    quantityField('voltage', 'Largest voltage it digitises, either way', { symbol: 'V_in', example: '10 V' }),
  ),
  bits: countField('Bits of the converter', { example: '24' }),
  noise: curveField('voltage density', 'Noise of the input, shorted'),
  samplingTo: aboveZeroField(quantityField('frequency', 'Highest sampling rate', { example: '102.4 kHz' })),
  inputResistance: optional(aboveZeroField(quantityField('resistance', 'Input resistance', { example: '1 Mohm' }))),
  remark: optional(textField('What else a reader should know')),
} as const;

type Corner = { readonly frequency: number; readonly order: number } | undefined;

/** The load it puts on the line, then its coupling, then its converter with the noise of both. */
export function voltageInputStages(
  sheet: Sheet<typeof voltageInputSheet>,
  coupling: Answer<Corner>,
): Answer<readonly Stage[]> {
  const stated = ask(sheet, ['rangePeak', 'bits', 'samplingTo'], (values) => values);
  const resistance = answerIfStated<number>(sheet.values.inputResistance, sheet.of, 'input resistance');
  return fromAll({ stated, coupling, load: resistance }, ({ stated: s, coupling: corner, load }) => {
    const step = (2 * s.rangePeak) / 2 ** s.bits;
    const quantisation = step / Math.sqrt(12) / Math.sqrt(s.samplingTo / 2);
    return [
      ...(load === undefined ? [] : [loading(sheet.of, load)]),
      ...(corner === undefined ? [] : [couplingStage(sheet.of, corner)]),
      {
        name: 'converter',
        part: sheet.of,
        enters: 'voltage',
        leaves: 'code',
        through: () => isolatedGain(oneComplex),
        noise: ask(
          sheet,
          ['noise'],
          ({ noise }) =>
            (frequency: number) =>
              Math.hypot(densityAt(noise, frequency), quantisation),
        ),
      } satisfies Stage,
    ];
  });
}

function loading(of: string, resistance: number): Stage {
  return {
    name: 'input resistance',
    part: of,
    enters: 'voltage',
    leaves: 'voltage',
    through: () => shuntAdmittance(complex(1 / resistance, 0)),
  };
}

function couplingStage(of: string, corner: NonNullable<Corner>): Stage {
  return {
    name: 'coupling corner',
    part: of,
    enters: 'voltage',
    leaves: 'voltage',
    blocksDirect: true,
    through: (frequency) => isolatedGain(highPass(frequency, corner.frequency, corner.order)),
  };
}

export const directCoupled: Answer<Corner> = answer(undefined);
