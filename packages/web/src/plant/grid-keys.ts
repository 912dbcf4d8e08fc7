/** A place in the table: a line and a column, both from 0. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

interface Extent {
  readonly lines: number;
  readonly columns: number;
  /** Lines that fit in the window. */
  readonly page: number;
}

/** Where a key leads from a place; undefined for a key that leads nowhere. */
export function placeAfter(
  key: string,
  control: boolean,
  from: Place,
  { lines, columns, page }: Extent,
): Place | undefined {
  const line = (to: number): Place => ({ ...from, line: Math.max(0, Math.min(lines - 1, to)) });
  const column = (to: number): Place => ({ ...from, column: Math.max(0, Math.min(columns - 1, to)) });
  switch (key) {
    case 'ArrowUp':
      return line(control ? 0 : from.line - 1);
    case 'ArrowDown':
      return line(control ? lines - 1 : from.line + 1);
    case 'ArrowLeft':
      return column(control ? 0 : from.column - 1);
    case 'ArrowRight':
      return column(control ? columns - 1 : from.column + 1);
    case 'Home':
      return control ? { line: 0, column: 0 } : column(0);
    case 'End':
      return control ? { line: lines - 1, column: columns - 1 } : column(columns - 1);
    case 'PageUp':
      return line(from.line - page);
    case 'PageDown':
      return line(from.line + page);
    default:
      return undefined;
  }
}
