/** The numbers that open, by the table or list they stand in. */
export function openingsIn(box: Element): readonly (readonly HTMLElement[])[] {
  const groups = new Map<Element, HTMLElement[]>();
  for (const each of box.querySelectorAll<HTMLElement>('button[data-opens]')) {
    const group = groupOf(each, box);
    groups.set(group, [...(groups.get(group) ?? []), each]);
  }
  return [...groups.values()];
}

function groupOf(each: Element, box: Element): Element {
  return each.closest('table, dl, ul, p') ?? box;
}

/** Where an arrow key leads from a number: along the row, or down its column to the next row that has one. */
export function openingAfter(key: string, from: HTMLElement, box: Element): HTMLElement | undefined {
  const group = groupOf(from, box);
  const all = [...group.querySelectorAll<HTMLElement>('button[data-opens]')];
  const at = all.indexOf(from);
  switch (key) {
    case 'ArrowRight':
      return all[at + 1];
    case 'ArrowLeft':
      return all[at - 1];
    case 'Home':
      return all[0];
    case 'End':
      return all.at(-1);
    case 'ArrowDown':
      return below(all.slice(at + 1), from) ?? undefined;
    case 'ArrowUp':
      return below(all.slice(0, at).reverse(), from) ?? undefined;
    default:
      return undefined;
  }
}

/** The nearest of them in another row, in the same column where that row has one there. */
function below(others: readonly HTMLElement[], from: HTMLElement): HTMLElement | undefined {
  const column = cellIndex(from);
  const row = from.closest('tr');
  if (row === null) return others[0];
  return others.find((each) => cellIndex(each) === column && each.closest('tr') !== row);
}

function cellIndex(each: Element): number | undefined {
  return each.closest<HTMLTableCellElement>('td, th')?.cellIndex;
}
