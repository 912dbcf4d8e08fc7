/** Signs that take two columns on a screen: the scripts of East Asia and full-width forms. */
const wide = /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6]/u;
const withoutWidth = /\p{Mn}|\p{Cf}/u;

/** How many columns a text takes on a screen. */
export function screenWidth(text: string): number {
  let width = 0;
  for (const sign of text) width += withoutWidth.test(sign) ? 0 : wide.test(sign) ? 2 : 1;
  return width;
}

export function padded(text: string, width: number, side: 'left' | 'right' = 'left'): string {
  const space = ' '.repeat(Math.max(0, width - screenWidth(text)));
  return side === 'left' ? text + space : space + text;
}
