import type { Look, TextLook } from './drawing.ts';

const lines: Readonly<Record<Look, string>> = {
  frame: 'fill:none;stroke:var(--ink);stroke-width:1',
  grid: 'fill:none;stroke:var(--rule);stroke-width:.8',
  'grid-fine': 'fill:none;stroke:var(--rule-fine);stroke-width:.6',
  'slant-acceleration': 'fill:none;stroke:var(--slant);stroke-width:.7',
  'slant-displacement': 'fill:none;stroke:var(--slant);stroke-width:.7;stroke-dasharray:5 3',
  target: 'fill:none;stroke:var(--accent);stroke-width:2.2',
  'target-thin': 'fill:none;stroke:var(--accent);stroke-width:1',
  'target-face': 'fill:var(--accent-face);stroke:none',
  floor: 'fill:none;stroke:var(--ink);stroke-width:1.6',
  'floor-band': 'fill:none;stroke:var(--ink);stroke-width:1.6;stroke-dasharray:2 2',
  ceiling: 'fill:none;stroke:var(--ink);stroke-width:1.6;stroke-dasharray:9 3 2 3',
  curve: 'fill:none;stroke:var(--ink);stroke-width:1.7',
  'curve-second': 'fill:none;stroke:var(--ink);stroke-width:1.1;stroke-dasharray:7 3',
  'curve-third': 'fill:none;stroke:var(--ink);stroke-width:1.1;stroke-dasharray:2 3',
  'curve-fourth': 'fill:none;stroke:var(--ink);stroke-width:1.1;stroke-dasharray:10 3 2 3',
  zone: 'fill:none;stroke:var(--ink-quiet);stroke-width:1.1;stroke-dasharray:1 3',
  usable: 'fill:var(--accent);stroke:none',
  window: 'fill:var(--accent-face);stroke:var(--accent);stroke-width:.9',
  ink: 'fill:none;stroke:var(--ink);stroke-width:1.3',
  thin: 'fill:none;stroke:var(--ink);stroke-width:.8',
  'centre-line': 'fill:none;stroke:var(--ink);stroke-width:.8;stroke-dasharray:14 3 3 3',
  hatched: 'fill:var(--hatch);stroke:var(--ink);stroke-width:.8',
  solid: 'fill:var(--ink);stroke:none',
  paper: 'fill:var(--paper);stroke:var(--ink);stroke-width:1.1',
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
  '.drawing text.cleared{paint-order:stroke;stroke:var(--paper);stroke-width:4px;stroke-linejoin:round}',
].join('\n');
