import { asMarkup, type Html, html, markupOf, type Piece } from './html.ts';

/** How the cells of a column are set: running text, one line of text, numbers on their decimal, or numbers with unit. */
export type ColumnKind = 'text' | 'line' | 'number' | 'measure';

export interface Column<Row> {
  readonly head: Piece;
  readonly kind?: ColumnKind;
  /** A text `0.5 mm/s rms` in a `number` or `measure` column is set on its decimal; anything else as it is. */
  cell(row: Row): Piece;
  /** The cell as it is set on its decimal, made one that opens: see `opened`. */
  opened?(row: Row, set: Piece): Piece;
}

export interface TableOptions<Row> {
  readonly caption?: Piece;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  /** On a narrow screen: rows as blocks with the heads beside, instead of a table to be pushed sideways. */
  readonly folds?: boolean;
  /** What stands there where there are no rows. */
  readonly empty?: Piece;
  /** A heading over the rows that share it; rows of one heading follow each other. */
  readonly group?: (row: Row) => Piece;
}

/** A table of so few rows is kept on one sheet. */
const shortTable = 9;
/** A table of so many columns is pushed sideways on a telephone. */
const broadTable = 5;

export function table<Row>({ caption, columns, rows, folds = false, empty, group }: TableOptions<Row>): Html {
  if (rows.length === 0 && empty !== undefined) return html`<p class="empty">${empty}</p>`;
  const cells = columns.map((column) => {
    const set = columnCells(column, rows);
    return set.map((cell, index) => (cell === '—' ? cell : (column.opened?.(rows[index]!, cell) ?? cell)));
  });
  const heads = columns.map(
    (column) => html`<th scope="col" role="columnheader" class="${column.kind ?? 'text'}">${column.head}</th>`,
  );
  const body = rows.map((row, index) => {
    const tds = columns.map((column, at) => {
      const kind = column.kind ?? 'text';
      const none = cells[at]![index] === '—' ? ' none' : '';
      return html`<td role="cell" class="${kind}${none}" data-head="${plainText(column.head)}"><span>${cells[at]![index]}</span></td>`;
    });
    return html`${groupHead(row, rows[index - 1], columns.length, group)}<tr role="row">${tds}</tr>\n`;
  });
  const title = caption === undefined ? undefined : html`<p class="caption">${caption}</p>`;
  const label = caption === undefined ? undefined : html` aria-label="${plainText(caption)}"`;
  const classes = [
    folds ? 'folds' : 'pushed',
    ...(rows.length <= shortTable ? ['short'] : []),
    ...(columns.length >= broadTable ? ['broad'] : []),
  ];
  return html`<div class="${classes.join(' ')}"${folds ? undefined : asMarkup(' tabindex="0"')}>
${title}<table role="table"${label}>
<thead role="rowgroup"><tr role="row">${heads}</tr></thead>
<tbody role="rowgroup">
${body}</tbody></table></div>
`;
}

function groupHead<Row>(row: Row, before: Row | undefined, columns: number, group: TableOptions<Row>['group']) {
  if (group === undefined) return undefined;
  const head = group(row);
  if (before !== undefined && markupOf(group(before)) === markupOf(head)) return undefined;
  return html`<tr role="row" class="group"><th role="rowheader" colspan="${columns}">${head}</th></tr>\n`;
}

function plainText(head: Piece): string {
  return markupOf(head)
    .replace(/<[^>]*>/g, '')
    .replace(/&#39;/g, "'")
    .replace(/&(?:amp|lt|gt|quot);/g, ' ');
}

const numberAtStart = /^([\u2212+±]?\d[\d.]*(?:e-?\d+)?)( ?%|°|)(?:\s+(.*))?$/su;

interface Split {
  readonly number: string;
  readonly rest: string;
}

/** Numbers of one column padded with figure spaces, so that their decimals stand in one line under tabular figures. */
function columnCells<Row>(column: Column<Row>, rows: readonly Row[]): readonly Piece[] {
  const cells = rows.map((row) => column.cell(row));
  if (column.kind !== 'number' && column.kind !== 'measure') return cells;
  const split = cells.map((cell) => (typeof cell === 'string' ? splitNumber(cell) : undefined));
  const after = Math.max(0, ...split.map((each) => (each === undefined ? 0 : decimalsOf(each.number))));
  const before = Math.max(0, ...split.map((each) => (each === undefined ? 0 : wholeOf(each.number))));
  const width = before + (after > 0 ? after + 0.5 : 0);
  return cells.map((cell, index) => {
    const found = split[index];
    if (found === undefined) return cell;
    const own = decimalsOf(found.number);
    const padding = own === after ? '' : (own === 0 ? '\u2008' : '') + '\u2007'.repeat(after - own);
    const pad = padding === '' ? undefined : html`<span class="pad">${padding}</span>`;
    const figure = html`<span class="figure" style="min-width:${width.toFixed(1)}ch">${found.number}${pad}</span>`;
    return html`<span class="line">${figure}${found.rest === '' ? undefined : ` ${found.rest}`}</span>`;
  });
}

function splitNumber(text: string): Split | undefined {
  const match = numberAtStart.exec(text);
  if (match === null) return undefined;
  return { number: match[1]!, rest: `${match[2]!.trim()} ${match[3] ?? ''}`.trim() };
}

function decimalsOf(number: string): number {
  const point = number.indexOf('.');
  return point < 0 ? 0 : number.length - point - 1;
}

function wholeOf(number: string): number {
  const point = number.indexOf('.');
  return point < 0 ? number.length : point;
}
