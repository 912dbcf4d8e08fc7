import type { DocumentRecord } from './record.ts';

/** A volume of so many sheets has some hundreds of pages: it opens anywhere, and one person can carry it. */
export const sheetsInVolume = 100;

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
