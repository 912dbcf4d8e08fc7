import type { Catalogue } from '../chain/catalogue.ts';
import type { ChainParts } from '../chain/chain.ts';
import type { Mount } from '../chain/mount/kinds.ts';
import type { Allowances } from '../chain/reading-uncertainty.ts';
import type { Transducer } from '../chain/transducer/kinds.ts';
import type { Policy } from '../demand/policy.ts';
import type { PointStatement } from '../demand/statement.ts';
import type { ZoneTable } from '../demand/zones/zone-table.ts';
import type { Train } from '../machine/train.ts';
import {
  choiceField,
  dateField,
  type Level,
  type Motion,
  optional,
  type Quantity,
  quantityField,
  type Sheet,
  type Stated,
  textField,
} from '../quantity/index.ts';

/** What a title block says. */
export const titleSheet = {
  name: textField('Name of the plant', { example: 'Brinewell Water, raw-water pump station 3' }),
  owner: optional(textField('Who owns it')),
  project: optional(textField('Project or order')),
  revision: optional(textField('Revision of this design')),
  date: optional(dateField('Date of this revision')),
  preparedBy: optional(textField('Function of who prepared it')),
} as const;

/** What decides which limits apply to a machine. */
export const machineFactsSheet = {
  power: quantityField('power', 'Rated power', { example: '160 kW' }),
  support: choiceField(['rigid', 'flexible'], 'Support: rigid or flexible'),
  shaftHeight: optional(quantityField('length', 'Height of the shaft above the base', { example: '315 mm' })),
} as const;

/** Limits as the owner gives them, with where they come from; or a table of a standard, asked for by its name. */
export type LimitStatement =
  | {
      readonly from: 'owner';
      readonly aB: Stated<Level<Motion>>;
      readonly bC: Stated<Level<Motion>>;
      readonly cD: Stated<Level<Motion>>;
      readonly source: string;
    }
  | { readonly from: 'table'; readonly table: ZoneTable };

/** What the owner wants to be told, and when. */
export interface AlarmStatement {
  /** Level of this machine when it was known to be well. */
  readonly baseline: Stated<Level<Motion>>;
  readonly delay: Stated<Quantity<'time'>>;
}

/** A point with the way from it to its input, the parts chosen, and the parts to be compared. */
export interface PlantPoint {
  readonly statement: PointStatement;
  /** Everything but transducer and mount. */
  readonly way: Omit<ChainParts, 'transducer' | 'mount'> | undefined;
  readonly chosen: { readonly transducer: Transducer; readonly mount: Mount } | undefined;
  readonly compared: { readonly transducers: readonly Transducer[]; readonly mounts: readonly Mount[] };
  readonly alarm: AlarmStatement | undefined;
}

export interface PlantMachine {
  readonly name: string;
  readonly title: string;
  readonly facts: Sheet<typeof machineFactsSheet>;
  readonly train: Train;
  readonly limits: LimitStatement | undefined;
  readonly points: readonly PlantPoint[];
}

/** A plant as its file states it. */
export interface Plant {
  readonly title: Sheet<typeof titleSheet>;
  readonly policy: Policy;
  readonly allowances: Allowances;
  readonly catalogue: Catalogue;
  readonly machines: readonly PlantMachine[];
}
