import type { Dataset58 } from './dataset-58.ts';

/** What one value of a dataset is made of, in the order in which it stands in the file. */
export type Part = 'along' | 'value' | 'imaginary';

export function partsOf({ even, complex }: Dataset58): readonly Part[] {
  return [...(even ? [] : (['along'] as const)), 'value', ...(complex ? (['imaginary'] as const) : [])];
}

/** Characters of each number in a line, repeated to its end: `6E13.5`, `4E20.12`, `2(E13.5,E20.12)`, `E13.5,2E20.12`. */
export function lineWidths(head: Pick<Dataset58, 'double' | 'even' | 'complex'>): readonly number[] {
  if (!head.double) return Array(6).fill(13);
  if (head.even) return Array(4).fill(20);
  return head.complex ? [13, 20, 20] : [13, 20, 13, 20];
}

/**
 * Bytes of each part of one value. The abscissa is single precision by the format; some writers make it as wide as the
 * ordinate, which the number of bytes tells.
 */
export function byteWidths(head: Dataset58): readonly (readonly number[])[] {
  const width = head.double ? 8 : 4;
  const wide = partsOf(head).map(() => width);
  const byFormat = partsOf(head).map((part) => (part === 'along' ? 4 : width));
  return head.double && !head.even ? [byFormat, wide] : [byFormat];
}

export function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0);
}
