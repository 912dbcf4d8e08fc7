import type { DocumentRecord } from './record.ts';

/**
 * A volume of so many sheets has at most some hundred and fifty pages: it opens anywhere, one person can carry it, and
 * what sets it, which holds all its pages at once (about a mebibyte each), holds no more for a larger plant.
 */
export const sheetsInVolume = 50;

/**
 * A document in volumes of its sheets; one that is short enough is its only volume, as it is. Each volume says in its
 * title which of how many it is, and is a document of its own with its own pages.
 */
export function volumesOf(record: DocumentRecord, most = sheetsInVolume): readonly DocumentRecord[] {
  const { sheets, title } = record;
  const count = Math.ceil(sheets.length / most);
  if (count <= 1) return [record];
  return Array.from({ length: count }, (_, at) => ({
    ...record,
    title: `${title}, volume ${at + 1} of ${count}`,
    sheets: sheets.slice(at * most, (at + 1) * most),
  }));
}
