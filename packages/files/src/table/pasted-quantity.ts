import { type Field, Refusal, refusalSentence, type Writing } from '@soundpost/core';

/** What a cell says: nothing, that nobody knows, a value, or something that cannot be taken. */
export type Pasted =
  | { readonly says: 'nothing' }
  | { readonly says: 'unknown' }
  | { readonly says: 'value'; readonly text: string }
  | { readonly says: 'refused'; readonly words: string };

const nothing = /^(?:n\.?\/?a\.?|nil|none|null|nan|tbd|tbc|\?+|[-–—\u2212_.]+)$/i;
const spreadsheetError = /^#(?:REF!|VALUE!|NAME\?|DIV\/0!|NUM!|NULL!|N\/A|SPILL!|CALC!|#+)$/i;

/** What holds for every cell before anything is made of its text; undefined where the text is to be read. */
export function saidBefore(cell: string): Pasted | undefined {
  if (cell === '') return { says: 'nothing' };
  if (/^unknown$/i.test(cell)) return { says: 'unknown' };
  if (spreadsheetError.test(cell)) return refused(`'${cell}' is an error of the spreadsheet. Mend it there.`);
  if (/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/u.test(cell)) {
    return refused('The cell holds an invisible character. Type it again.');
  }
  if (cell.startsWith('=')) return refused('A formula stands here, not its value. Copy it again as values.');
  if (nothing.test(cell)) {
    return refused(`'${cell}' is no value, and is not read as zero. Leave the cell empty, or write 'unknown'.`);
  }
  return undefined;
}

/**
 * A quantity as a cell states it, with its unit in the cell or in the head of its column, written the way the plant
 * file writes numbers. `read` is how the table writes them; undefined where nobody has said, and then a number that can
 * be read two ways is refused.
 */
export function pastedQuantity(
  cell: string,
  unit: string | undefined,
  field: Field<unknown>,
  read: Writing['decimal'] | undefined,
  file: Writing['decimal'],
): Pasted {
  const before = saidBefore(cell);
  if (before !== undefined) return before;
  if (read === undefined && readsTwoWays(cell)) {
    return refused(`Say first whether '${cell}' has a decimal comma or a decimal point.`);
  }
  const [, number = '', own = ''] = /^([+\-\u2212]?\d[\d.,]*)\s*(.*)$/su.exec(cell) ?? [];
  if (number !== '' && own === '' && unit === undefined) {
    return refused(
      `'${cell}' has no unit, in the cell or in the head of its column; none is ever assumed. Write '${field.example}'.`,
    );
  }
  if (own !== '' && unit !== undefined && own !== unit) {
    return refused(`The cell says '${own}' and the head of its column '${unit}'. One of them is wrong.`);
  }
  const text = number !== '' && own === '' ? `${number} ${unit}` : cell;
  try {
    field.read(text, { decimal: read ?? 'point' });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return refused(tableWords(refusalSentence(error.reason)));
  }
  return { says: 'value', text: file === 'comma' ? text.replace('.', ',') : text.replace(',', '.') };
}

/** `2,5` and `1.250` are one number here and another there. */
export function readsTwoWays(cell: string): boolean {
  const number = /^[+\-\u2212]?(\d[\d.,]*)/u.exec(cell)?.[1] ?? '';
  return number.includes(',') || /^\d{1,3}(?:\.\d{3})+$/.test(number);
}

function refused(words: string): Pasted {
  return { says: 'refused', words };
}

/** The reader of files speaks of the file; here a table is read. */
function tableWords(words: string): string {
  return words
    .replace(/; a decimal comma is read only where the file declares 'decimals: comma'/, '')
    .replace('This file declares comma decimals', 'The table is read with a decimal comma')
    .replace(/^./, (first) => first.toUpperCase());
}
