import {
  channelAnswers,
  occasionKinds,
  type ReadingTable,
  readingKinds,
  recordingAnswers,
  type Session,
  services,
  sessionSheet,
} from '@soundpost/core';
import { listOf, named } from './collections.ts';
import { byKind, kindReader, type SheetKind, sheetsByKind } from './kinds.ts';
import { nameAt } from './placed.ts';
import { choice, made, type Reader, text } from './reader.ts';
import { beside, optionally, record } from './record.ts';
import { sheet } from './sheet.ts';
import { versionReader } from './version.ts';
import { recordsVersions, versioned } from './versions.ts';

export const recordsVersion = recordsVersions.newest;

const occasion = sheetsByKind('an occasion', occasionKinds as unknown as readonly SheetKind[], () => 'occasion');

const channel = made(
  record('a channel of a recording', {
    channel: text('Its name in the recording, or its number from 1', { example: '1' }),
    point: optionally(text('The measuring point it is', { example: 'P-301/pump-drive-end-horizontal' })),
    serves: optionally(choice(services, 'What it serves for, where it is no measuring point')),
    answers: beside(
      sheet(channelAnswers, (map) => `channel ${nameAt(map)}`, 'answers to what the recording leaves open'),
    ),
  }),
  (read, placed, refuse) => {
    if ((read.point === undefined) !== (read.serves === undefined))
      return { point: undefined, serves: undefined, ...read };
    return refuse(placed, {
      read: read.point === undefined ? "neither 'point' nor 'serves'" : "both 'point' and 'serves'",
      expected: "'point', the measuring point it is; or 'serves', what else it is there for",
    });
  },
);

const recording = record('a recording', {
  file: text('The file, from where this one stands', { example: 'records/stopped.wav' }),
  occasion,
  answers: beside(sheet(recordingAnswers, (map) => `recording ${nameAt(map)}`, 'answers for all of its channels')),
  channels: named(channel, 'name', 'its channels by names of your own'),
});

const reading = byKind(
  'a table that was read off',
  readingKinds.map((each) =>
    kindReader(
      each.kind,
      record(each.name, {
        point: text('The measuring point it was taken at', { example: 'P-301/pump-drive-end-horizontal' }),
        rows: listOf(
          sheet(each.row, () => each.name, 'one step of the table'),
          'the steps of the table',
          { least: 1 },
        ),
      }),
    ),
  ),
);

/** What was recorded, on which occasions, and what the recordings do not say themselves. */
export const recordsReader: Reader<Session> = versioned(
  recordsVersions,
  made(
    record('a records file', {
      soundpost: choice(['records'], 'What the file is'),
      version: versionReader(recordsVersion),
      session: sheet(sessionSheet, 'session', 'who recorded, when, with what'),
      recordings: optionally(named(recording, 'name', 'recordings by names of your own')),
      readings: optionally(named(reading, 'name', 'tables that were read off by hand')),
    }),
    ({ session, recordings = [], readings = [] }) => ({
      head: session,
      // Occasions and tables were read by the lists of the core.
      recordings: recordings as unknown as Session['recordings'],
      readings: readings as unknown as readonly ReadingTable[],
    }),
  ),
);
