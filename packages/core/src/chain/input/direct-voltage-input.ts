import { ask } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { inputKind } from './input-kind.ts';
import { directCoupled, voltageInputSheet, voltageInputStages } from './voltage-input.ts';

/** An input that passes the constant part too: for positions and for proximity systems. */
export const directVoltageInput = inputKind({
  kind: 'direct-voltage-input',
  name: 'Direct-coupled voltage input',
  dataSheet: voltageInputSheet,
  sources: [clause(tradePractice)],
  model: (sheet) => ({
    of: sheet.of,
    takes: ['negative-supply', 'voltage-supply', 'self-generating'] as const,
    perhaps: undefined,
    stages: voltageInputStages(sheet, directCoupled),
    peakVoltage: ask(sheet, ['rangePeak'], (s) => s.rangePeak as number),
    bits: ask(sheet, ['bits'], (s) => s.bits),
    constantCurrent: undefined,
    loopCard: undefined,
    samplingTo: ask(sheet, ['samplingTo'], (s) => s.samplingTo as number),
  }),
});
