import { countField, countUpTo, type Field } from '../quantity/index.ts';
import { highestFilterOrder } from '../signal/filters.ts';

/** The order of a corner, as the filters of the signal room know it. */
export function filterOrderField(meaning: string): Field<number> {
  return countUpTo(highestFilterOrder, countField(meaning, { example: '1' }));
}
