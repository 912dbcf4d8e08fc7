import { Broken } from '../../../quantity/index.ts';
import type { ZoneTable } from '../zone-table.ts';
import { iso7919x3tables } from './iso-7919-3.ts';
import { iso10816x1edition1995tables } from './iso-10816-1-1995.ts';
import { iso10816x3edition2009tables } from './iso-10816-3-2009.ts';
import { iso10816x7edition2009tables } from './iso-10816-7-2009.ts';
import { iso20816x3edition2022tables } from './iso-20816-3-2022.ts';
import { iso20816x8edition2018tables } from './iso-20816-8-2018.ts';

/** Every table that is shipped, by edition. None was read in the standard itself. */
export const zoneTables: readonly ZoneTable[] = distinct([
  ...iso20816x3edition2022tables,
  ...iso10816x3edition2009tables,
  ...iso7919x3tables,
  ...iso10816x7edition2009tables,
  ...iso20816x8edition2018tables,
  ...iso10816x1edition1995tables,
]);

function distinct(tables: readonly ZoneTable[]): readonly ZoneTable[] {
  const names = new Set(tables.map((each) => each.name));
  if (names.size !== tables.length) throw new Broken('a table stands once in the list', { names: [...names] });
  return tables;
}
