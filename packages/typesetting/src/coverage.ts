import { Broken } from '@soundpost/core';

/** What stands for a sign the shipped fonts do not have: it is missed in sight, never set in a font of the machine. */
export const noGlyph = '\u25A1';

/** Every code point a font in the TrueType format has a glyph for, from its table of characters (`cmap`, format 4 or 12). */
export function codePointsOf(font: Buffer): ReadonlySet<number> {
  const tables = font.readUInt16BE(4);
  const at = Array.from({ length: tables }, (_, index) => 12 + 16 * index).find(
    (record) => font.toString('latin1', record, record + 4) === 'cmap',
  );
  if (at === undefined) throw new Broken('a shipped font has a table of characters', {});
  const cmap = font.readUInt32BE(at + 8);
  const found = new Set<number>();
  for (let index = 0; index < font.readUInt16BE(cmap + 2); index++) {
    const table = cmap + font.readUInt32BE(cmap + 4 + 8 * index + 4);
    const format = font.readUInt16BE(table);
    if (format === 4) readSegments(font, table, found);
    if (format === 12) readGroups(font, table, found);
  }
  return found;
}

function readSegments(font: Buffer, table: number, found: Set<number>): void {
  const doubled = font.readUInt16BE(table + 6);
  for (let offset = 0; offset < doubled; offset += 2) {
    const end = font.readUInt16BE(table + 14 + offset);
    const start = font.readUInt16BE(table + 16 + doubled + offset);
    const delta = font.readUInt16BE(table + 16 + 2 * doubled + offset);
    const place = table + 16 + 3 * doubled + offset;
    const range = font.readUInt16BE(place);
    for (let code = start; code <= end && code !== 0xffff; code++) {
      const glyph = range === 0 ? (code + delta) & 0xffff : font.readUInt16BE(place + range + 2 * (code - start));
      if (glyph !== 0) found.add(code);
    }
  }
}

function readGroups(font: Buffer, table: number, found: Set<number>): void {
  for (let group = 0; group < font.readUInt32BE(table + 12); group++) {
    const place = table + 16 + 12 * group;
    for (let code = font.readUInt32BE(place); code <= font.readUInt32BE(place + 4); code++) found.add(code);
  }
}

/** A text with every sign the fonts lack as an empty box; line ends stay. */
export function covered(text: string, has: ReadonlySet<number>): string {
  let told = '';
  for (const sign of text) told += sign === '\n' || has.has(sign.codePointAt(0)!) ? sign : noGlyph;
  return told;
}
