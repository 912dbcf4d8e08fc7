import type { Drawing } from '../drawing/drawing.ts';
import { drawingStyle } from '../drawing/style.ts';
import { svg } from '../drawing/svg.ts';
import { markupOf } from '../typesetting/html.ts';

/** Ink on paper, legible in black and white. */
const printed: Readonly<Record<string, string>> = {
  ink: '#111417',
  'ink-quiet': '#4a5058',
  paper: '#ffffff',
  rule: '#c3c7cb',
  'rule-fine': '#dfe1e4',
  slant: '#9aa1a9',
  accent: '#0b4f72',
  'accent-face': '#dfe9ef',
  hatch: '#e2e3e5',
};

const family = 'Inter, "Liberation Sans", Arial, sans-serif';

/** A drawing as a file of its own: its colours and faces are written in it, nothing comes from a page around it. */
export function standaloneSvg(drawing: Drawing): string {
  const style = drawingStyle
    .replace(/var\(--([a-z-]+)\)/g, (_, name: string) => printed[name] ?? '#000000')
    .replace(/\.drawing\{[^}]*\}/, `.drawing text{font-family:${family}}`);
  const marked = markupOf(svg(drawing, 'drawing'));
  const sized = `<svg xmlns="http://www.w3.org/2000/svg" width="${drawing.width}" height="${drawing.height}" `;
  return `${marked.replace('<svg ', sized).replace('>', `>\n<style>${style}</style>`)}\n`;
}
