import type { RefusalReason } from '@soundpost/core';

/**
 * Characters that are not seen, or that change how others are seen: control characters other than tab and line end,
 * marks of writing direction, zero-width spaces, lone halves of a surrogate pair, foreign line ends. Also more than 30
 * combining marks in a row, the bound of the stream-safe text format (UAX #15, from memory), since longer runs make
 * composition slow.
 */
export const unseen =
  /(?![\t\n])\p{Cc}|[\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u2069\ufeff\u{e0000}-\u{e007f}]|\p{Cs}|\p{M}{31}/u;

/** Why a text that came from escapes (`"\u202e"`) cannot stand in a file either; undefined where it can. */
export function unseenIn(text: string): RefusalReason | undefined {
  const found = unseen.exec(text);
  return found === null ? undefined : unseenReason(found[0]);
}

export function unseenReason(character: string): RefusalReason {
  const code = character.codePointAt(0)!;
  const expected = 'visible characters, tabs and line ends only';
  if (character.length >= 31) {
    return { read: character.slice(0, 3), expected, suggestion: 'More than 30 marks stand on one character.' };
  }
  const read = `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
  return { read, expected, suggestion: `It is ${unseenName(code)}; delete it.` };
}

function unseenName(code: number): string {
  if (code === 0x0d) return 'a carriage return without a line feed: save the file with LF or CRLF line ends, or';
  if (code < 0x20 || (code >= 0x7f && code < 0xa0)) return 'a control character';
  if (code >= 0xd800 && code <= 0xdfff) return 'half of a character';
  if (code === 0x2028 || code === 0x2029) return 'a line separator that most editors do not show';
  if ([0x61c, 0x200e, 0x200f].includes(code) || (code >= 0x202a && code <= 0x202e) || code >= 0xe0000) {
    return 'a mark that changes how the text beside it is shown';
  }
  return code >= 0x2066 && code <= 0x2069
    ? 'a mark that changes how the text beside it is shown'
    : 'a character of no width';
}
