import { type Picture, type PictureRow, showMeasure } from '@soundpost/core';
import { figure } from '../drawing/figure.ts';
import { type Html, html, named } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { pictureDrawing } from './picture-drawing.ts';

/** Every picture of a point, each with its numbers in a table beside it. */
export function pictureFigures(pictures: readonly Picture[], id: string, { showing }: Setting): Html {
  return html`${pictures.map((picture, index) =>
    figure(
      `${id}-${index + 1}`,
      (width) => pictureDrawing(picture, width),
      html`<strong>${picture.title}</strong> (${named(picture.of)}).${shadedWords(picture)}`,
      table({
        columns: [
          { head: 'What', cell: ({ what }: PictureRow) => what },
          { head: 'Expected', cell: ({ expected }) => showMeasure(expected, showing) },
          { head: 'Found', cell: ({ found }) => showMeasure(found, showing) },
        ],
        rows: picture.rows,
        empty: 'No numbers go with it.',
      }),
    ),
  )}`;
}

function shadedWords({ bands, curves }: Picture): string {
  const parts = [
    ...(bands.length > 0 ? ['The shaded band is where it is expected'] : []),
    ...(curves.some(({ is }) => is === 'expected') ? ['the thin line is what is expected'] : []),
    ...(curves.some(({ is }) => is === 'limit') ? ['dotted lines are the limits'] : []),
  ];
  if (parts.length === 0) return '';
  const words = parts.join('; ');
  return ` ${words[0]!.toUpperCase()}${words.slice(1)}.`;
}
