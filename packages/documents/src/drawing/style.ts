import type { Look, TextLook } from './drawing.ts';

/**
 * The only widths a line is drawn with, in units of a drawing. A drawing of 760 units across the text of an upright A4
 * (182 mm) has them as 0.13, 0.18, 0.25, 0.35 and 0.5 mm: the five narrowest of the series of ISO 128-20, from memory;
 * across an oblong A4 they are half as wide again. Legible in black and white: kinds of line differ in dashes too.
 */
export const lineWeights = { hair: 0.55, fine: 0.75, plain: 1.05, firm: 1.5, heavy: 2.1 } as const;

const { hair, fine, plain, firm, heavy } = lineWeights;

const lines: Readonly<Record<Look, string>> = {
  frame: `fill:none;stroke:var(--ink);stroke-width:${plain}`,
  grid: `fill:none;stroke:var(--rule);stroke-width:${fine}`,
  'grid-fine': `fill:none;stroke:var(--rule-fine);stroke-width:${hair}`,
  'slant-acceleration': `fill:none;stroke:var(--slant);stroke-width:${hair}`,
  'slant-displacement': `fill:none;stroke:var(--slant);stroke-width:${hair};stroke-dasharray:5 3`,
  target: `fill:none;stroke:var(--accent);stroke-width:${heavy}`,
  'target-thin': `fill:none;stroke:var(--accent);stroke-width:${plain}`,
  'target-face': 'fill:var(--accent-face);stroke:none',
  floor: `fill:none;stroke:var(--ink);stroke-width:${firm}`,
  'floor-band': `fill:none;stroke:var(--ink);stroke-width:${firm};stroke-dasharray:2 2`,
  ceiling: `fill:none;stroke:var(--ink);stroke-width:${firm};stroke-dasharray:9 3 2 3`,
  curve: `fill:none;stroke:var(--ink);stroke-width:${firm}`,
  'curve-second': `fill:none;stroke:var(--ink);stroke-width:${plain};stroke-dasharray:7 3`,
  'curve-third': `fill:none;stroke:var(--ink);stroke-width:${plain};stroke-dasharray:2 3`,
  'curve-fourth': `fill:none;stroke:var(--ink);stroke-width:${plain};stroke-dasharray:10 3 2 3`,
  zone: `fill:none;stroke:var(--ink-quiet);stroke-width:${plain};stroke-dasharray:1 3`,
  usable: 'fill:var(--accent);stroke:none',
  window: `fill:var(--accent-face);stroke:var(--accent);stroke-width:${fine}`,
  ink: `fill:none;stroke:var(--ink);stroke-width:${plain}`,
  thin: `fill:none;stroke:var(--ink);stroke-width:${fine}`,
  'centre-line': `fill:none;stroke:var(--ink);stroke-width:${fine};stroke-dasharray:14 3 3 3`,
  hatched: `fill:var(--hatch);stroke:var(--ink);stroke-width:${fine}`,
  solid: 'fill:var(--ink);stroke:none',
  paper: `fill:var(--paper);stroke:var(--ink);stroke-width:${plain}`,
  'accent-solid': 'fill:var(--accent);stroke:none',
};

const texts: Readonly<Record<TextLook, string>> = {
  plain: 'fill:var(--ink)',
  small: 'fill:var(--ink)',
  quiet: 'fill:var(--ink-quiet)',
  strong: 'fill:var(--ink);font-weight:600',
  italic: 'fill:var(--ink-quiet);font-style:italic',
  accent: 'fill:var(--accent);font-weight:600',
};

/** The style of every look, for a page or for a drawing that stands alone; the colours come from the page. */
export const drawingStyle: string = [
  '.drawing{display:block;width:100%;height:auto;font-family:inherit}',
  '.drawing path,.drawing rect,.drawing circle{stroke-linejoin:round}',
  ...Object.entries(lines).map(([look, style]) => `.drawing .${look}{${style}}`),
  ...Object.entries(texts).map(([look, style]) => `.drawing text.${look}{${style}}`),
  '.drawing text{font-variant-numeric:tabular-nums}',
  '.drawing .clear{fill:var(--paper);stroke:none}',
].join('\n');
