/**
 * The cells of a table copied from a spreadsheet, or of a text whose values are parted by tabs, semicolons or commas:
 * rows of trimmed texts. A cell in quotes may hold the sign that parts, line ends and doubled quotes. Rows without any
 * text at the end are left out; one in the midst stays, so that rows keep their number. `parting` is the sign that
 * parts cells where that is known.
 */
export function pastedCells(text: string, parting?: '\t' | ';' | ','): readonly (readonly string[])[] {
  const plain = text
    .replace(/^\ufeff/, '')
    .replaceAll('\r\n', '\n')
    .replaceAll('\r', '\n');
  const between = parting ?? partingSign(plain);
  const rows: string[][] = [[]];
  let at = 0;
  while (at < plain.length) {
    const { cell, end } = cellAt(plain, at, between);
    rows.at(-1)!.push(trimmed(cell));
    at = end + 1;
    if (plain[end] === '\n' && at < plain.length) rows.push([]);
    else if (plain[end] === between && at === plain.length) rows.at(-1)!.push('');
  }
  while (rows.length > 0 && rows.at(-1)!.every((cell) => cell === '')) rows.pop();
  return rows;
}

function cellAt(text: string, from: number, between: string): { readonly cell: string; readonly end: number } {
  if (text[from] === '"') {
    const quoted = /"((?:[^"]|"")*)"[ ]*/y;
    quoted.lastIndex = from;
    const match = quoted.exec(text);
    const end = quoted.lastIndex;
    if (match !== null && (end === text.length || text[end] === between || text[end] === '\n')) {
      return { cell: match[1]!.replaceAll('""', '"').replaceAll('\n', ' '), end };
    }
  }
  let end = from;
  while (end < text.length && text[end] !== between && text[end] !== '\n') end++;
  return { cell: text.slice(from, end), end };
}

/** A spreadsheet parts by tabs; a file of values by semicolons wherever the comma is the decimal sign. */
function partingSign(text: string): string {
  const bare = text.replace(/"(?:[^"]|"")*"/g, '');
  return bare.includes('\t') ? '\t' : bare.includes(';') ? ';' : ',';
}

function trimmed(cell: string): string {
  return cell.replace(/[\p{Zs}\t]+/gu, ' ').trim();
}
