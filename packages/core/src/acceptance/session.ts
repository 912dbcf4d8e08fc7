import type { Sheet } from '../quantity/index.ts';
import {
  choiceField,
  type Fields,
  levelField,
  numberField,
  optional,
  quantityField,
  textField,
} from '../quantity/index.ts';
import { couplings } from './measured-record.ts';
import type { Occasion } from './occasion/kinds.ts';
import type { ReadingTable } from './reading/kinds.ts';

/** What a channel of a recording serves for, where it is no measuring point. */
export const services = ['once-per-turn', 'reference'] as const;
export type Service = (typeof services)[number];

/** What people write down of a channel: answers to what the recording itself leaves open. */
export const channelAnswers = {
  unit: optional(textField('Unit of its numbers', { example: 'V' })),
  fullScale: optional(
    levelField(
      ['voltage', 'acceleration', 'velocity', 'displacement'],
      'What the number 1 stands for, of shares of full scale',
      {
        example: '10 V peak',
      },
    ),
  ),
  sensitivity: optional(textField('Sensitivity the recorder was told', { example: '100 mV/g' })),
  gain: optional(numberField('Numbers over volts at the terminal; 1 where nothing amplifies', { example: '10' })),
  coupling: optional(choiceField(couplings, 'Whether direct voltage passes')),
  speed: optional(quantityField('shaft speed', 'Speed of the shaft the point speaks of', { example: '1486 r/min' })),
} as const satisfies Fields;

/** How the columns of a text are written. */
export const decimalSigns = ['point', 'comma'] as const;
export const columnSeparators = ['tab', 'semicolon', 'comma', 'space'] as const;

/** Answers for all channels of a recording. */
export const recordingAnswers = {
  rate: optional(quantityField('frequency', 'Samples a second', { example: '51.2 kHz' })),
  sign: optional(choiceField(decimalSigns, 'Decimal sign of a text, where it cannot be told')),
  separator: optional(choiceField(columnSeparators, 'Between the columns of a text, where it cannot be told')),
  start: optional(textField('Date, time and time zone of its start', { example: '2026-11-20 14:05 +01:00' })),
} as const satisfies Fields;

/** Who recorded, when, with what: the head of the acceptance. */
export const sessionSheet = {
  title: textField('What was recorded, and why', { example: 'Acceptance of pump P-301' }),
  date: optional(textField('Day of the recordings', { example: '2026-11-20' })),
  by: optional(textField('Who recorded')),
  witness: optional(textField('Who was present for the owner')),
  recorder: optional(textField('Recorder, with its serial number and calibration')),
  condition: optional(textField('State of the machine and the process that was agreed')),
} as const satisfies Fields;

/** One channel as the records file names it. */
export interface StatedChannel {
  readonly name: string;
  /** Its name or number, from 1, in the recording. */
  readonly channel: string;
  readonly point: string | undefined;
  readonly serves: Service | undefined;
  readonly answers: Sheet<typeof channelAnswers>;
}

/** One recording as the records file names it. */
export interface StatedRecording {
  readonly name: string;
  readonly file: string;
  readonly occasion: Occasion;
  readonly answers: Sheet<typeof recordingAnswers>;
  readonly channels: readonly StatedChannel[];
}

/** Everything that was recorded and read off for one acceptance. */
export interface Session {
  readonly head: Sheet<typeof sessionSheet>;
  readonly recordings: readonly StatedRecording[];
  readonly readings: readonly ReadingTable[];
}
