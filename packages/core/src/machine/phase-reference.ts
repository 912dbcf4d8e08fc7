import { answerOf, countField, type Sheet } from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { couplesNothing, machineElementKind } from './element.ts';

const sources = [clause(tradePractice, 'phase and speed from the pulses of a shaft')];

export const phaseReferenceSheet = {
  pulses: countField('Pulses in one turn; one tells phase, more tell how the speed moves within the turn', {
    symbol: 'p',
    example: '1',
  }),
} as const;
export type PhaseReferenceSheet = Sheet<typeof phaseReferenceSheet>;

/** A mark, notch or toothed wheel that a pick-up looks at: it makes pulses and no vibration. */
export const phaseReference = machineElementKind({
  kind: 'phase-reference',
  name: 'Phase reference: pulses of a shaft',
  sheet: phaseReferenceSheet,
  places: ['on'],
  relations: () => couplesNothing,
  lines: () => [],
  doubts: () => [],
  pulses: { on: 'on', perTurn: (sheet) => answerOf(sheet.values.pulses, sheet.of, 'pulses') },
  sources,
});
