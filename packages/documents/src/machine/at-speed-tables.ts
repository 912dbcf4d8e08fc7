import {
  type CloseAtSpeed,
  type DesignedMachine,
  type LineAtSpeed,
  type LineMultiple,
  type MeetingAtSpeed,
  showNumber,
  showQuantity,
  showSpan,
  standsStill,
  type TrainAtSpeed,
  usualDistance,
  usualSpeedChange,
} from '@soundpost/core';
import { opened } from '../derivation/opened.ts';
import { answered } from '../typesetting/answers.ts';
import { type Html, html, named, type Piece } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { explainedAway, explainedOrder, explainedSeparation, explainedStanding } from './explained-closeness.ts';
import { explainedLine, explainedRange } from './explained-frequency.ts';

/** What a machine does at one speed, as tables: its lines, what comes close, what meets a mode. */
export interface AtSpeedTables {
  readonly lines: Html;
  readonly close: Html;
  readonly meetings: Html;
}

/** Digits that tell a frequency to better than a tenth of a part in a thousand. */
const digits = 5;

export function atSpeedTables(machine: DesignedMachine, held: TrainAtSpeed, setting: Setting): AtSpeedTables {
  return {
    lines: lineTable(machine, held, setting),
    close: closeTable(held, setting),
    meetings: meetingTable(held, setting),
  };
}

function lineTable(machine: DesignedMachine, { lines, state }: TrainAtSpeed, setting: Setting): Html {
  const { showing } = setting;
  const hertz = (value: number) => showNumber(value, digits, showing.decimal);
  return table({
    caption: 'Every line at this speed',
    columns: [
      { head: 'Line', cell: ({ line }: LineAtSpeed) => named(line.name) },
      {
        head: 'Hz',
        kind: 'number',
        cell: ({ frequency }) => answered(frequency, hertz),
        opened: ({ line, frequency }, set) =>
          frequency.known ? opened(set, explainedLine(machine, line, state, frequency.value, showing), setting) : set,
      },
      {
        head: 'With slip, Hz',
        kind: 'line',
        cell: ({ between }) =>
          between === undefined || between.low === between.high
            ? '—'
            : `${hertz(between.low)} to ${hertz(between.high)}`,
        opened: ({ line, between }, set) =>
          between === undefined || between.low === between.high
            ? set
            : opened(set, explainedRange(line, between, 'at the speed held', showing), setting),
      },
      { head: 'What it is', cell: ({ line }) => `${line.meaning}${standsStill(line) ? '; stands still' : ''}` },
    ],
    rows: lines,
    folds: true,
    empty: 'Nothing in this train makes a line.',
  });
}

function closeTable({ close }: TrainAtSpeed, setting: Setting): Html {
  const { showing } = setting;
  const openedAs =
    (as: 'difference' | 'resolution' | 'recordLength') =>
    ({ of, here }: CloseAtSpeed, set: Piece) =>
      opened(set, explainedSeparation(of.a, of.b, here, as, showing), setting);
  return table({
    caption: 'Lines that come close here',
    columns: [
      { head: 'One line', cell: ({ of }: CloseAtSpeed) => multiple(of.a) },
      { head: 'The other', cell: ({ of }) => multiple(of.b) },
      {
        head: 'Apart',
        kind: 'measure',
        cell: ({ here }) => showQuantity('frequency', here.difference, showing),
        opened: openedAs('difference'),
      },
      {
        head: 'Line spacing needed',
        kind: 'measure',
        cell: ({ here }) =>
          here.resolution === undefined ? 'none tells them apart' : showQuantity('frequency', here.resolution, showing),
        opened: openedAs('resolution'),
      },
      {
        head: 'Record of',
        kind: 'measure',
        cell: ({ here }) =>
          here.recordLength === undefined ? '—' : showQuantity('duration', here.recordLength, showing),
        opened: openedAs('recordLength'),
      },
    ],
    rows: close,
    folds: true,
    empty: `No two lines of unlike origin come close here, nor within ${showQuantity('fraction', usualSpeedChange, showing)} of this speed.`,
  });
}

function meetingTable({ meetings }: TrainAtSpeed, setting: Setting): Html {
  const { showing } = setting;
  return table({
    caption: 'Orders near something that stands still',
    columns: [
      {
        head: 'Order',
        cell: ({ of }: MeetingAtSpeed) => html`${of.harmonic === 1 ? '' : `${of.harmonic} × `}${named(of.order.name)}`,
      },
      {
        head: 'It is at',
        kind: 'measure',
        cell: ({ frequency }) => showQuantity('frequency', frequency, showing),
        opened: ({ of, frequency }, set) => opened(set, explainedOrder(of, frequency, showing), setting),
      },
      { head: 'Stands still', cell: ({ of }) => named(of.standing.name) },
      {
        head: 'That lies at',
        kind: 'measure',
        cell: ({ of }) => bandOf(of, showing),
        opened: ({ of }, set) => opened(set, explainedStanding(of, showing), setting),
      },
      {
        head: 'Away',
        kind: 'measure',
        cell: ({ relative }) => (relative === 0 ? 'inside it' : showQuantity('fraction', relative, showing)),
        opened: ({ of, frequency, relative }, set) =>
          opened(set, explainedAway(of, frequency, relative, showing), setting),
      },
    ],
    rows: meetings,
    folds: true,
    empty: `No order is nearer than ${showQuantity('fraction', usualDistance, showing)} to anything stated that stands still.`,
  });
}

function bandOf({ band: { low, high } }: MeetingAtSpeed['of'], showing: Setting['showing']): Piece {
  return low === high
    ? showQuantity('frequency', low, showing)
    : showSpan('frequency', { low, high } as never, showing);
}

function multiple({ line, harmonic }: LineMultiple): Html {
  return html`${harmonic === 1 ? '' : `${harmonic} × `}${named(line.name)}`;
}
