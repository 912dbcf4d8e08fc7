import {
  type Arrangement,
  alarmLogicSheet,
  arrangementKinds,
  deeds,
  levelField,
  motions,
  quantityField,
  responseTimeSheet,
} from '@soundpost/core';
import { named } from './collections.ts';
import { sheetsByKind } from './kinds.ts';
import { nameAt } from './placed.ts';
import { choice, type Reader, text } from './reader.ts';
import { optionally, record } from './record.ts';
import { sheet } from './sheet.ts';
import { stated } from './stated.ts';

const delay = (meaning: string) => stated(quantityField('time', meaning, { example: '3 s' }));

/** When somebody is told, and how a trip is decided. */
export const alarm = record('when somebody is told', {
  baseline: stated(levelField(motions, 'Level when the machine was known to be well', { example: '1.9 mm/s rms' })),
  delay: delay('How long a level must last'),
  tripDelay: optionally(delay('The same for the trip, where it differs')),
  logic: optionally(sheet(alarmLogicSheet, 'trip logic of the point', 'how the trip is decided')),
  response: optionally(sheet(responseTimeSheet, 'response time of the trip', 'what the trip waits for')),
  setPoints: optionally(
    named(
      record('a further set point', {
        does: choice(deeds, 'Whether it tells somebody or stops the machine'),
        level: stated(levelField(motions, 'Its level', { example: '2 mm/s rms 100-400 Hz' })),
        delay: delay('How long its level must last'),
        because: text('Why it is set where it is'),
      }),
      'name',
      'further set points by name',
    ),
  ),
});

/** What the probes of a point do, each by its own data sheet. Kind and sheet were read by the list of the core. */
export const probes = named(
  sheetsByKind('an arrangement of probes', arrangementKinds, (map) => `probes ${nameAt(map)}`),
  'name',
  'arrangements of probes by name',
) as unknown as Reader<readonly Arrangement[]>;
