import {
  type Coincidence,
  comparableLines,
  type DesignedMachine,
  type LineMultiple,
  showNumber,
  showQuantity,
} from '@soundpost/core';
import { opened } from '../derivation/opened.ts';
import { type Html, html, joined, named, type Piece } from '../typesetting/html.ts';
import { type Setting, unknown } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { explainedSeparation } from './explained-closeness.ts';

/** Pairs of lines that come close, and what tells them apart. */
export function coincidenceSection({ coincidences, stated }: DesignedMachine, setting: Setting): Html {
  const { notCompared } = comparableLines(stated.train);
  const openedAs =
    (as: 'difference' | 'resolution' | 'recordLength') =>
    ({ a, b, nearest }: Coincidence, set: Piece) =>
      opened(set, explainedSeparation(a, b, nearest, as, setting.showing), setting);
  const pairs = table({
    caption: 'Lines that come close somewhere in the range, nearest first',
    columns: [
      { head: 'One line', cell: ({ a }: Coincidence) => multiple(a) },
      { head: 'The other', cell: ({ b }) => multiple(b) },
      {
        head: 'Nearest',
        kind: 'measure',
        cell: ({ nearest }) => showQuantity('frequency', nearest.difference, setting.showing),
        opened: openedAs('difference'),
      },
      {
        head: 'Line spacing needed',
        kind: 'measure',
        cell: ({ nearest }) => spacing(nearest, setting),
        opened: openedAs('resolution'),
      },
      {
        head: 'Record of',
        kind: 'measure',
        cell: ({ nearest }) => record(nearest, setting),
        opened: openedAs('recordLength'),
      },
      { head: 'Told apart', cell: (each) => toldApart(each, setting) },
    ],
    rows: coincidences,
    folds: true,
    empty: 'No two lines of unlike origin come close anywhere in the operating range.',
  });
  if (notCompared.length === 0) return pairs;
  const left = notCompared.map(({ line, missing }) => html`<li>${named(line.name)}: ${unknown(missing)}</li>`);
  return html`${pairs}<p>Not compared, because their frequency is not known:</p><ul>${left}</ul>`;
}

function multiple({ line, harmonic }: LineMultiple): Html {
  return html`${harmonic === 1 ? '' : `${harmonic} × `}${named(line.name)}`;
}

function spacing({ resolution }: Coincidence['nearest'], { showing }: Setting): Piece {
  return resolution === undefined ? 'none tells them apart' : showQuantity('frequency', resolution, showing);
}

function record({ recordLength }: Coincidence['nearest'], { showing }: Setting): Piece {
  return recordLength === undefined ? '—' : showQuantity('duration', recordLength, showing);
}

function toldApart(each: Coincidence, { showing }: Setting): Html {
  const parts: Piece[] = [];
  if (each.separable === 'everywhere') parts.push('at every speed, with that spacing');
  if (each.separable === 'not everywhere') {
    parts.push(
      `not where they cross: at ${each.crossings.map((at) => showQuantity('frequency', at, showing)).join(', ')}`,
    );
  }
  if (each.separable === 'never') parts.push('at no speed: they are one frequency');
  if (each.differBy !== undefined) parts.push(html`they differ by ${named(each.differBy)}`);
  if (each.spread > each.nearest.difference) {
    parts.push(`slip may move them ${showNumber(each.spread, 3)} Hz against each other, so they may meet`);
  }
  if (each.instead !== undefined) parts.push(`instead: ${each.instead}`);
  return joined(parts, '; ');
}
