import {
  aboveZeroField,
  choiceField,
  notBelowZeroField,
  optional,
  quantityField,
  textField,
} from '../../quantity/index.ts';
import { startActions } from './alarm-run.ts';
import { faultActions, votingNames } from './voting.ts';

/** How a trip is decided, as its owner states it. What is not known is asked, never taken for the usual. */
export const alarmLogicSheet = {
  voting: choiceField(votingNames, 'How many channels must agree, of how many', { example: '2oo2' }),
  channels: optional(textField('The other channels that vote', { example: 'bearing 1 Y' })),
  whenNotOk: choiceField(faultActions, 'What a channel that is not OK counts for'),
  hysteresis: optional(
    notBelowZeroField(
      quantityField('fraction', 'Share of the set point a level must fall below it to reset', { example: '5 %' }),
    ),
  ),
  atStart: optional(choiceField(startActions, 'What is done with the set points during run-up')),
  startFactor: optional(aboveZeroField(quantityField('ratio', 'By how much they are multiplied', { example: '2' }))),
  startTime: optional(notBelowZeroField(quantityField('time', 'How long after start', { example: '90 s' }))),
  bypassTime: optional(
    notBelowZeroField(quantityField('time', 'After how long a bypass ends by itself', { example: '2 h' })),
  ),
  remark: optional(textField('What else a reader should know')),
} as const;

const wait = (meaning: string, example: string) => notBelowZeroField(quantityField('time', meaning, { example }));

/** From the level at the bearing to the machine that stops. Each is asked for where a response time is stated at all. */
export const responseTimeSheet = {
  detector: wait('Time constant of the detector', '0.5 s'),
  filter: wait('Delay of filters before it', '0.05 s'),
  scan: wait('Time between two looks of the controller', '0.1 s'),
  finalElement: wait('From the order to stop until the machine is stopped from driving', '0.5 s'),
  allowed: wait('Most time from the level to the stop', '5 s'),
} as const;
