import { asMarkup, type Html, html } from '../typesetting/html.ts';
import { escaped } from '../typesetting/inert-text.ts';
import type { Drawing, Label, Mark, Point } from './drawing.ts';
import { labelBox } from './text-extent.ts';

/** A drawing as SVG that stands in a page; `id` makes its title and description known to readers of the screen. */
export function svg(drawing: Drawing, id: string): Html {
  const { width, height, title, description, marks } = drawing;
  const body = asMarkup(marks.map(element).join('\n'));
  return html`<svg class="drawing" viewBox="0 0 ${round(width)} ${round(height)}" role="img" aria-labelledby="${id}-t ${id}-d">
<title id="${id}-t">${title}</title><desc id="${id}-d">${description}</desc>
${body}
</svg>`;
}

function element(mark: Mark): string {
  switch (mark.is) {
    case 'polyline':
      return `<path class="${mark.look}" d="${pathOf(mark.points, mark.closed === true)}"/>`;
    case 'rectangle':
      return `<rect class="${mark.look}" x="${round(mark.x)}" y="${round(mark.y)}" width="${round(mark.width)}" height="${round(mark.height)}"${mark.radius === undefined ? '' : ` rx="${round(mark.radius)}"`}/>`;
    case 'circle':
      return `<circle class="${mark.look}" cx="${round(mark.x)}" cy="${round(mark.y)}" r="${round(mark.radius)}"/>`;
    case 'label':
      return `${mark.cleared === true ? clearing(mark) : ''}<text class="${mark.look}" x="${round(mark.x)}" y="${round(mark.y)}" font-size="${round(mark.size)}" text-anchor="${mark.anchor}">${escaped(mark.text)}</text>`;
  }
}

/**
 * Paper under the letters. A halo about each letter would do less, but setters of SVG draw it letter by letter, each over
 * the end of the one before.
 */
function clearing(of: Label): string {
  const { x, y, width, height } = labelBox(of);
  const [side, head] = [0.02 * width, 0.06 * of.size];
  return `<rect class="clear" x="${round(x + side)}" y="${round(y + head)}" width="${round(width - 2 * side)}" height="${round(height - 2 * head)}"/>`;
}

function pathOf(points: readonly Point[], closed: boolean): string {
  const steps = points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`);
  return steps.join('') + (closed ? 'Z' : '');
}

/** A tenth of a unit is finer than any pen. */
function round(value: number): string {
  return String(Math.round(value * 10) / 10 + 0);
}
