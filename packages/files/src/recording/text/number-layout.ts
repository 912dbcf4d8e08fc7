import { type ReadingChoices, refusedAt, type Separator, separators } from '../open-recording.ts';
import { numberIn, wordsOf } from '../text-lines.ts';

/** How the rows of a text are to be read. */
export interface NumberLayout {
  readonly separator: Separator;
  readonly decimal: 'point' | 'comma';
}

/** A layout under which the lines from `start` on are rows of `columns` numbers. */
export interface PossibleLayout extends NumberLayout {
  /** Index of the first row among the lines looked at. */
  readonly start: number;
  readonly columns: number;
  /** Columns of dates and clock times, which are no numbers. */
  readonly clocks: readonly number[];
  /** Fields of the first row as written. */
  readonly first: readonly string[];
  readonly rows: readonly (readonly number[])[];
}

export function fieldsOf(line: string, separator: Separator): readonly string[] {
  if (separator === 'space') return line.trim().split(/\s+/);
  const mark = separator === 'tab' ? '\t' : separator === 'semicolon' ? ';' : ',';
  return line.split(mark).map((each) => each.trim());
}

const noNumber = /^(?:|[+-]?nan|[+-]?inf(?:inity)?|[+-]?1\.#\w+|n\/?a|#n\/?a|null|none|-+|overload|ovl)$/i;

/** The number of a field; NaN where it is empty or says that there is none; undefined where it is something else. */
export function fieldNumber(written: string, decimal: NumberLayout['decimal']): number | undefined {
  // The minus of typesetters, as its three bytes of UTF-8 or as one sign.
  const field = written.includes('\u00e2\u0088\u0092') ? written.replace('\u00e2\u0088\u0092', '-') : written;
  if (decimal === 'comma' && field.includes('.')) return undefined;
  const value = numberIn(decimal === 'comma' ? field.replace(',', '.') : field);
  if (value !== undefined) return value;
  if (/^"[^"]*"$/.test(field)) return fieldNumber(field.slice(1, -1).trim(), decimal);
  return noNumber.test(field) ? Number.NaN : undefined;
}

/** Rows looked at to tell how they are written. */
const rowsLookedAt = 40;

/**
 * The one layout in which these lines are a head and rows of numbers. Where several give different numbers nothing is
 * guessed: it is refused with the question. Throws Refusal.
 */
export function numberLayout(lines: readonly string[], file: string, choices: ReadingChoices): PossibleLayout {
  const declared = { ...declaredIn(lines), ...choices };
  const found = layoutsAllowed(declared).flatMap((layout) => possibleIn(lines, layout));
  // A layout that takes rows for a head reads fewer of them: it is not the one.
  const earliest = Math.min(...found.map(({ start }) => start));
  const possible = found.filter(({ start }) => start === earliest);
  if (possible.length === 0) {
    throw refusedAt(file, 'its first lines', {
      read: wordsOf(lineNearRows(lines)).slice(0, 60),
      expected: 'columns of numbers below a head, in WAV, Universal File, MAT or text',
      suggestion:
        choices.decimal === undefined && choices.separator === undefined
          ? 'Two rows at least, each with as many columns as the first, and a number in one of them; no marks between thousands.'
          : 'Do the decimal sign and the separator that were stated fit?',
    });
  }
  if (possible.every((each) => cutAtCommas(lines, each))) {
    throw refusedAt(file, `line ${possible[0]!.start + 1}`, {
      read: lines[possible[0]!.start]!.slice(0, 60),
      expected: 'another sign between columns than within numbers',
      suggestion:
        'It has twice as many columns as names: commas seem to stand within the numbers and between them. Export it with semicolons or tabs.',
    });
  }
  const different = possible.filter((each, index) => possible.findIndex((other) => sameNumbers(each, other)) === index);
  const named = different.filter((each) => namesFit(lines, each));
  const left = named.length === 1 ? named : different;
  if (left.length > 1 || (choices.separator === undefined && thousands(lines, left[0]!))) {
    throw refusedAt(file, `line ${left[0]!.start + 1}`, {
      read: lines[left[0]!.start]!.slice(0, 60),
      expected: 'a decimal sign and a separator that can be told apart',
      suggestion: `It can be read as ${left.map(inWords).join(' or as ')}${
        left.length > 1 ? '' : ', or with marks between thousands'
      }: say which, with --sign point|comma and --separator ${separators.join('|')}.`,
    });
  }
  return left[0]!;
}

/** The first line that begins like a number, to be shown: rather than the head it is what could not be read. */
function lineNearRows(lines: readonly string[]): string {
  const filled = lines.filter((each) => each.trim() !== '');
  return filled.find((each) => /^\s*["']?[+-]?[\d.,]/.test(each)) ?? filled[0] ?? '';
}

/** Columns of whole numbers and of digits by turns under half as many names: numbers cut in two at their decimal comma. */
function cutAtCommas(lines: readonly string[], { start, separator, columns, rows }: PossibleLayout): boolean {
  if (separator !== 'comma' || columns < 2 || columns % 2 !== 0) return false;
  const above = lines.slice(0, start).findLast((each) => each.trim() !== '');
  if (above === undefined || 2 * fieldsOf(above, separator).length !== columns) return false;
  return rows.every((row) => row.every((each, column) => Number.isInteger(each) && (column % 2 === 0 || each >= 0)));
}

function layoutsAllowed({ decimal, separator }: ReadingChoices): readonly NumberLayout[] {
  return separators
    .flatMap((each) => (['point', 'comma'] as const).map((sign) => ({ separator: each, decimal: sign })))
    .filter((each) => !(each.separator === 'comma' && each.decimal === 'comma'))
    .filter((each) => (decimal ?? each.decimal) === each.decimal)
    .filter((each) => (separator ?? each.separator) === each.separator);
}

const separatorWords: Readonly<Record<string, Separator>> = {
  comma: 'comma',
  ',': 'comma',
  tab: 'tab',
  semicolon: 'semicolon',
  ';': 'semicolon',
  space: 'space',
};

/** What the head itself says of its separator and decimal sign. */
function declaredIn(lines: readonly string[]): ReadingChoices {
  let declared: ReadingChoices = {};
  for (const line of lines.slice(0, 60)) {
    const separator = /^\W*separator\W+(comma|tab|semicolon|space|,|;)\W*$/i.exec(line)?.[1];
    if (separator !== undefined) declared = { ...declared, separator: separatorWords[separator.toLowerCase()]! };
    const decimal = /^\W*decimal[_ ](?:separator|sign|point)\s*[\t,;:= ]\s*(\.|,|point|comma|dot)\s*$/i.exec(line)?.[1];
    if (decimal !== undefined) declared = { ...declared, decimal: /^(,|comma)$/i.test(decimal) ? 'comma' : 'point' };
  }
  return declared;
}

function possibleIn(lines: readonly string[], layout: NumberLayout): readonly PossibleLayout[] {
  for (let start = 0; start < lines.length; start++) {
    const rows = rowsFrom(lines, start, layout);
    if (rows === undefined) continue;
    const first = lines[start + lines.slice(start).findIndex((each) => each.trim() !== '')]!;
    const fields = fieldsOf(first, layout.separator);
    const clocks = fields.flatMap((each, column) => (isClock(each) ? [column] : []));
    return [{ ...layout, start, columns: rows[0]!.length, clocks, first: fields, rows }];
  }
  return [];
}

/** `2026-11-25 17:04:32.5`, `25.11.2026`, `17:04:32`. */
function isClock(field: string): boolean {
  return /^"?\d{1,4}([-/.:])\d{1,2}\1\d{1,4}(?:[.,]\d+)?(?:[ T].*)?Z?"?$/.test(field);
}

/** The rows from a line on, where every line looked at is one and all have as many fields. */
function rowsFrom(lines: readonly string[], start: number, { separator, decimal }: NumberLayout) {
  const rows: (readonly number[])[] = [];
  for (let index = start; index < lines.length && rows.length < rowsLookedAt; index++) {
    const line = lines[index]!;
    if (line.trim() === '') {
      if (rows.length === 0) return undefined;
      continue;
    }
    const values = fieldsOf(line, separator).map(
      (field) => fieldNumber(field, decimal) ?? (isClock(field) ? Number.NaN : undefined),
    );
    if (values.some((each) => each === undefined) || !values.some((each) => Number.isFinite(each))) return undefined;
    if (rows.length > 0 && values.length !== rows[0]!.length) return undefined;
    rows.push(values as number[]);
  }
  // One line of numbers below words is no table.
  return rows.length < 2 ? undefined : rows;
}

/** Whether two readings give the same numbers; what stands empty between separators is not looked at. */
function sameNumbers(a: PossibleLayout, b: PossibleLayout): boolean {
  const there = (layout: PossibleLayout) =>
    layout.rows.map((row) => row.filter((each) => !Number.isNaN(each)).join(' ')).join('\n');
  return a.start === b.start && there(a) === there(b);
}

/** Whether the line above the rows names as many columns, more than one. */
function namesFit(lines: readonly string[], { start, separator, columns }: PossibleLayout): boolean {
  const above = lines.slice(0, start).findLast((each) => each.trim() !== '');
  if (above === undefined || columns < 2) return false;
  const names = fieldsOf(above, separator).length;
  return names === columns || names === columns + 1;
}

/** Whether every line could be one number with marks between its thousands. */
function thousands(lines: readonly string[], { start }: PossibleLayout): boolean {
  const looked = lines.slice(start, start + rowsLookedAt).filter((each) => each.trim() !== '');
  return looked.every((each) => /^\s*[+-]?\d{1,3}(?:(?:,\d{3})+(?:\.\d+)?|(?:\.\d{3})+,\d+)\s*$/.test(each));
}

function inWords({ separator, decimal, rows }: PossibleLayout): string {
  const first = rows[0]!.map(String).slice(0, 4).join(' and ');
  return `${rows[0]!.length === 1 ? 'one column' : `${rows[0]!.length} columns`} (${first}; separator ${separator}, decimal ${decimal})`;
}
