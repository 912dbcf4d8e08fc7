import type { DesignedPoint, Showing } from '@soundpost/core';
import { type Drawing, label, line, type Mark, type Width } from '../drawing/drawing.ts';
import { boldness, wrapped } from '../drawing/text-extent.ts';
import { type ChainPart, chainParts, keyNumbers } from './chain-parts.ts';

/** The parts of the chain in a row, from the surface to the number, each with what decides most about it. */
export function chainDrawing({ point, appraisal }: DesignedPoint, showing: Showing, width: Width): Drawing | undefined {
  if (appraisal === undefined) return undefined;
  const { chain } = appraisal.prediction;
  const parts = chainParts(chain.parts);
  const drawn = width === 'wide' ? inRow(parts, showing) : inColumn(parts, showing);
  return {
    ...drawn,
    title: `Measuring chain at ${point.of}`,
    description: parts.map((part) => `${part.role} ${part.name}: ${keyNumbers(part, showing).join(', ')}`).join('; '),
  };
}

type Drawn = Omit<Drawing, 'title' | 'description'>;

const rowWidth = 760;
const size = 12;

/** A row of up to so many parts; more go on in a second row. */
const mostInRow = 6;

function inRow(parts: readonly ChainPart[], showing: Showing): Drawn {
  const rows: ChainPart[][] = [];
  for (let from = 0; from < parts.length; from += mostInRow) rows.push(parts.slice(from, from + mostInRow));
  const marks: Mark[] = [];
  let y = 0;
  for (const [index, row] of rows.entries()) {
    const drawn = oneRow(row, y, index === 0, index === rows.length - 1, showing);
    marks.push(...drawn.marks);
    y = drawn.bottom + 14;
  }
  return { width: rowWidth, height: y - 8, marks };
}

function oneRow(parts: readonly ChainPart[], top: number, first: boolean, last: boolean, showing: Showing) {
  const ends = 62;
  const column = (rowWidth - 2 * ends) / parts.length;
  const y = top + 24;
  const marks: Mark[] = [line(first ? 4 : ends - 20, y, last ? rowWidth - 4 : rowWidth - ends + 20, y, 'ink')];
  if (first) marks.push(label(4, y - 7, 'motion', { size, look: 'italic' }));
  if (last) marks.push(label(rowWidth - 4, y - 7, 'number', { size, anchor: 'end', look: 'italic' }));
  let bottom = y;
  for (const [index, part] of parts.entries()) {
    const x = ends + column * (index + 0.5);
    const room = column - 8;
    const put = (text: string, line: number, look: 'strong' | 'quiet' | 'plain') =>
      marks.push(
        label(x, y + 36 + line * 1.32 * size, text, {
          size: look === 'strong' ? size : size - 1,
          anchor: 'middle',
          look,
        }),
      );
    marks.push(...part.symbol(x, y));
    const lines = [
      ...wrapped(part.name, room / boldness, size).map((text) => ({ text, look: 'strong' as const })),
      ...wrapped(part.kind.name, room, size - 1).map((text) => ({ text, look: 'quiet' as const })),
      ...keyNumbers(part, showing).flatMap((each) =>
        wrapped(each, room, size - 1).map((text) => ({ text, look: 'plain' as const })),
      ),
    ];
    for (const [at, each] of lines.entries()) put(each.text, at, each.look);
    bottom = Math.max(bottom, y + 36 + lines.length * 1.32 * size);
  }
  return { marks, bottom };
}

const columnWidth = 358;

function inColumn(parts: readonly ChainPart[], showing: Showing): Drawn {
  const small = 11;
  const marks: Mark[] = [];
  const left = 66;
  const room = columnWidth - left - 4;
  let y = 8;
  const middles: number[] = [];
  const symbols: Mark[] = [];
  for (const part of parts) {
    const texts = [
      ...wrapped(`${part.role}: ${part.name}`, room / boldness, small).map((text) => ({
        text,
        look: 'strong' as const,
      })),
      ...wrapped(part.kind.name, room, small).map((text) => ({ text, look: 'quiet' as const })),
      ...wrapped(keyNumbers(part, showing).join(', '), room, small).map((text) => ({
        text,
        look: 'plain' as const,
      })),
    ];
    const height = Math.max(40, texts.length * 1.35 * small) + 12;
    const middle = y + 22;
    middles.push(middle);
    symbols.push(...part.symbol(30, middle));
    for (const [index, { text, look }] of texts.entries()) {
      marks.push(label(left, y + (index + 1) * 1.35 * small, text, { size: small, look }));
    }
    y += height;
  }
  return {
    width: columnWidth,
    height: y,
    marks: [line(30, middles[0]!, 30, middles.at(-1)!, 'ink'), ...symbols, ...marks],
  };
}
