import {
  type DesignedMachine,
  type MapMeeting,
  type SpeedMap,
  showQuantity,
  showSpan,
  speedMap,
} from '@soundpost/core';
import { opened } from '../derivation/opened.ts';
import { figure } from '../drawing/figure.ts';
import { type Html, html, joined, named } from '../typesetting/html.ts';
import { type Setting, unknown } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { explainedMet, explainedStanding } from './explained-closeness.ts';
import { alongWords, speedMapDrawing } from './speed-map-drawing.ts';

/** The lines of the machine over its speeds, and where they meet what stands still. */
export function speedMapSection(machine: DesignedMachine, id: string, setting: Setting): Html {
  const found = speedMap(machine.stated.train);
  if (!found.known) return html`<p>No speed map can be drawn: ${unknown(found.missing)}.</p>`;
  const map = found.value;
  const drawn = speedMapDrawing(machine, setting.showing, 'wide');
  const picture =
    drawn === undefined
      ? html`<p>The machine runs at one speed, so there is nothing to draw over it.</p>`
      : figure(id, (width) => speedMapDrawing(machine, setting.showing, width)!, speedMapCaption);
  return html`${picture}${meetings(map, setting)}`;
}

/** Where orders meet what stands still over the whole range, without the picture. */
export function meetingSection(machine: DesignedMachine, setting: Setting): Html {
  const found = speedMap(machine.stated.train);
  return found.known ? meetings(found.value, setting) : html`<p>Not told: ${unknown(found.missing)}.</p>`;
}

function meetings(map: SpeedMap, setting: Setting): Html {
  const left =
    map.left.length === 0
      ? undefined
      : html`<p>Left out, because something is not known: ${joined(map.left.map((each) => named(each)))}.</p>`;
  return html`${meetingTable(map, setting)}${left}`;
}

export const speedMapCaption =
  'Each full line follows the speed; a dash-dotted one stands still: a mode, a critical speed, the mains, a carrier, with its width tinted where it has one. A ring marks where an order meets it. A line without a name here has it in the table of frequencies.';

function meetingTable(map: SpeedMap, setting: Setting): Html {
  return table({
    caption: html`Orders that meet or come near what stands still, over ${alongWords(map)}`,
    columns: [
      {
        head: 'Order',
        cell: ({ order, harmonic }: MapMeeting) => html`${harmonic === 1 ? '' : `${harmonic} × `}${named(order.name)}`,
      },
      { head: 'Stands still', cell: ({ standing }) => named(standing.name) },
      {
        head: 'It lies at',
        kind: 'measure',
        cell: ({ band }) => range('frequency', band, setting),
        opened: (each, set) => opened(set, explainedStanding(each, setting.showing), setting),
      },
      {
        head: 'Met at',
        cell: (each) => metAt(each, map, setting),
        opened: (each, set) => opened(set, explainedMet(each, metAt(each, map, setting), setting.showing), setting),
      },
    ],
    rows: map.meetings,
    folds: true,
    empty: 'No order comes near anything stated that stands still.',
  });
}

type Range = MapMeeting['band'];

function range(name: 'frequency' | 'shaft speed', { low, high }: Range, { showing }: Setting): string {
  return low === high ? showQuantity(name, low, showing) : showSpan(name, { low, high } as never, showing);
}

function metAt({ inside, nearest }: MapMeeting, { along }: SpeedMap, setting: Setting): string {
  const name = along.by === 'shaft' ? 'shaft speed' : 'frequency';
  if (inside.length === 0) {
    const { showing } = setting;
    return `not in the range: ${showQuantity('fraction', nearest.relative, showing)} away at ${showQuantity(name, nearest.at, showing)}`;
  }
  return inside.map((each) => range(name, each, setting)).join('; ');
}
