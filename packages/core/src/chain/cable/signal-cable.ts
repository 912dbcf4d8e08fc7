import {
  type Answer,
  answer,
  answerOf,
  ask,
  countField,
  fromAll,
  optional,
  quantityField,
  type Sheet,
  spanField,
  textField,
} from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { Stage } from '../stage.ts';
import { lumpedLine } from '../two-port.ts';
import { cableKind, type DeclaredCable } from './cable-kind.ts';

const dataSheet = {
  construction: textField('Cores, screen, armour'),
  cores: optional(countField('How many cores one loop may use, without the screen', { least: 1, example: '2' })),
  capacitancePerLength: quantityField('capacitance per length', 'Core to core with screen, as the signal sees it', {
    symbol: 'C_l',
    example: '100 pF/m',
  }),
  inductancePerLength: quantityField('inductance per length', 'Of the pair', { example: '0.65 uH/m' }),
  resistancePerLength: quantityField('resistance per length', 'Of one core', { symbol: 'r', example: '37 ohm/km' }),
  temperature: spanField('temperature', 'Surroundings it may lie in', { example: '-30..90 °C' }),
  resists: optional(
    textField('What its jacket resists, as its maker says, one after the other', { example: 'mineral oil, UV' }),
  ),
  capacitanceForCertificates: optional(
    quantityField('capacitance per length', 'Declared for intrinsic safety', { example: '160 pF/m' }),
  ),
  inductanceForCertificates: optional(
    quantityField('inductance per length', 'Declared for intrinsic safety', { example: '0.65 uH/m' }),
  ),
  remark: optional(textField('What else a reader should know')),
} as const;

/** R, L and C of the length, lumped: below a tenth of the frequency at which the cable is a wavelength long. */
function lineStages(sheet: Sheet<typeof dataSheet>, length: Answer<number>): Answer<readonly Stage[]> {
  const stated = ask(sheet, ['capacitancePerLength', 'inductancePerLength', 'resistancePerLength'], (values) => values);
  return fromAll({ stated, length }, ({ stated: s, length: metres }) => [
    {
      name: `${metres} m of cable`,
      part: sheet.of,
      enters: 'voltage',
      leaves: 'voltage',
      through: (frequency) =>
        lumpedLine(
          2 * s.resistancePerLength * metres,
          s.inductancePerLength * metres,
          s.capacitancePerLength * metres,
          2 * Math.PI * frequency,
        ),
    },
  ]);
}

function declaredFor(sheet: Sheet<typeof dataSheet>): DeclaredCable | undefined {
  const { capacitanceForCertificates: capacitance, inductanceForCertificates: inductance } = sheet.values;
  if (capacitance === undefined && inductance === undefined) return undefined;
  const origin = capacitance?.known === true ? capacitance : inductance;
  return {
    capacitancePerLength: answerOf<number>(capacitance, sheet.of, 'capacitance for certificates'),
    inductancePerLength: answerOf<number>(inductance, sheet.of, 'inductance for certificates'),
    resistancePerLength: ask(sheet, ['resistancePerLength'], (s) => 2 * s.resistancePerLength),
    from: origin?.known === true ? (origin.source ?? origin.status ?? sheet.of) : sheet.of,
  };
}

export const signalCable = cableKind({
  kind: 'signal-cable',
  name: 'Screened signal cable',
  dataSheet,
  sources: [clause(tradePractice)],
  model: (sheet, length) => ({
    of: sheet.of,
    length,
    capacitance: fromAll(
      { perLength: ask(sheet, ['capacitancePerLength'], (s) => s.capacitancePerLength as number), length },
      ({ perLength, length: metres }) => perLength * metres,
    ),
    loopResistance: fromAll(
      { perLength: ask(sheet, ['resistancePerLength'], (s) => s.resistancePerLength as number), length },
      ({ perLength, length: metres }) => 2 * perLength * metres,
    ),
    declared: declaredFor(sheet),
    stages: (port) => (port === 'voltage' ? lineStages(sheet, length) : answer([])),
  }),
});
