import {
  aboveZeroField,
  choiceField,
  countField,
  type Fields,
  moneyField,
  optional,
  quantityField,
  type Sheet,
  textField,
} from '../quantity/index.ts';
import { keepingRules } from './part-type.ts';

/** What keeping part numbers costs here, as the owner's store sees it. */
export const storeSheet = {
  title: textField('Whose prices and stock these are', { example: 'Store of the pump stations' }),
  keepingPerYear: moneyField('What keeping one more part number costs a year', { example: '600 EUR' }),
  horizon: aboveZeroField(quantityField('duration', 'Over how long it is reckoned', { example: '10 years' })),
  serviceLevel: aboveZeroField(
    quantityField('fraction', 'Probability that the store is not empty within a lead time', { example: '95 %' }),
  ),
  mostTransducers: optional(countField('Most types of transducer the owner wants to keep')),
} as const satisfies Fields;

/** What one part number costs, and how its spares are had. */
export const storePartSheet = {
  price: moneyField('Price of one piece', { example: '320 EUR' }),
  fitting: optional(moneyField('What fitting one costs beside its price', { example: '150 EUR' })),
  leadTime: quantityField('duration', 'From order to delivery', { example: '8 weeks' }),
  betweenFailures: aboveZeroField(
    quantityField('duration', 'Mean time in use of one piece until it fails', { example: '40 years' }),
  ),
  inStock: optional(countField('Pieces in the store now', { least: 0 })),
  rule: optional(choiceField(keepingRules, 'Whether it must be kept, must not, or may')),
} as const satisfies Fields;

/** The shelves of the catalogue whose types are chosen plant-wide. */
export const storeShelves = ['transducers', 'mounts'] as const;
export type StoreShelf = (typeof storeShelves)[number];

export type StorePart = Sheet<typeof storePartSheet> & { readonly name: string };

/** Prices, stock and what keeping costs, as a store file states it. */
export interface Store {
  readonly head: Sheet<typeof storeSheet>;
  readonly parts: Readonly<Record<StoreShelf, readonly StorePart[]>>;
}
