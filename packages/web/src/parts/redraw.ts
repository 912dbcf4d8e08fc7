/**
 * Puts a drawing in the place of another one of the same shape by changing only the marks that are not the same: most
 * of a chart under the hand stays as it is, and what stays need not be set and painted anew. A drawing is one mark a
 * line, after the line of the drawing itself and the line of its title and description. What is not made so, an empty
 * drawing among it, is put there whole.
 */
export function redraw(into: HTMLElement, markup: string): void {
  const before = drawings.get(into);
  // The paper under a label stands before it on its line.
  const lines = markup.split(/\n|(?<=\/>)(?=<text )/);
  const drawing = into.firstElementChild;
  if (before === undefined || drawing === null || before.lines[0] !== lines[0]) {
    // Without the ends of the lines, so that nothing but marks stands between the marks.
    into.innerHTML = lines.join('');
    const marks = marksOf(into);
    if (marks.length === lines.length - head - 1) drawings.set(into, { lines, marks });
    else drawings.delete(into);
    return;
  }
  if (before.lines[1] !== lines[1]) {
    const words = made(lines[1]!);
    for (const each of words) drawing.querySelector(`:scope > ${each.localName}`)?.replaceWith(each);
  }
  drawings.set(into, { lines, marks: remarked(drawing, before, lines) });
}

interface Drawing {
  readonly lines: readonly string[];
  readonly marks: readonly Element[];
}

const drawings = new WeakMap<HTMLElement, Drawing>();

/** Lines before the first mark: the drawing, its words. */
const head = 2;
/** Elements before the first mark: title and description. */
const words = 2;

function marksOf(into: HTMLElement): readonly Element[] {
  return [...(into.firstElementChild?.children ?? [])].slice(words);
}

function remarked(drawing: Element, before: Drawing, lines: readonly string[]): readonly Element[] {
  const known = new Map<string, Element[]>();
  for (const [index, mark] of before.marks.entries()) {
    const line = before.lines[index + head]!;
    const same = known.get(line);
    if (same === undefined) known.set(line, [mark]);
    else same.push(mark);
  }
  const wanted = lines.slice(head, -1);
  const kept = wanted.map((line) => known.get(line)?.shift());
  for (const rest of known.values()) for (const each of rest) each.remove();
  const fresh = made(wanted.filter((_, index) => kept[index] === undefined).join(''));
  let next: Element | null = drawing.children[words] ?? null;
  return kept.map((each) => {
    const mark = each ?? fresh.shift()!;
    if (mark === next) next = mark.nextElementSibling;
    else drawing.insertBefore(mark, next);
    return mark;
  });
}

function made(markup: string): Element[] {
  const holder = document.createElementNS('http://www.w3.org/2000/svg', 'g');
  holder.innerHTML = markup;
  return [...holder.children];
}
