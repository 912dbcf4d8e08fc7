/**
 * Text from files as it may stand in a page: nothing in it acts. Control characters and those that turn the direction
 * of writing become a visible dot, line ends a space, half characters the replacement sign, and a tower of combining
 * marks is cut to four.
 */
export function inert(text: string): string {
  return text
    .replace(/[\r\n\t\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/[\p{Cc}\p{Co}\u061C\u200B\u200E\u200F\u202A-\u202E\u2060-\u206F\uFEFF]/gu, '·')
    .replace(/\p{Cs}/gu, '\uFFFD')
    .replace(/(\p{M}{4})\p{M}+/gu, '$1');
}

/** A text no longer than `most` characters, saying how much was left out. */
export function cut(text: string, most: number): string {
  const characters = [...text];
  if (characters.length <= most) return text;
  return `${characters.slice(0, most).join('').trimEnd()}… (${characters.length} characters in all)`;
}

/** What is unsafe between tags and inside quoted attributes. */
export function escaped(text: string): string {
  return inert(text)
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

/** A text inside a quoted CSS string: everything but letters and digits by its code, which a space ends. */
export function cssString(text: string): string {
  const codes = [...inert(text)].map((sign) =>
    /^[a-zA-Z0-9]$/.test(sign) ? sign : `\\${sign.codePointAt(0)!.toString(16)} `,
  );
  return `"${codes.join('')}"`;
}
