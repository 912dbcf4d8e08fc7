import type { alarmLogicSheet, responseTimeSheet } from '../alarm/logic/statement.ts';
import type { WindowStatement } from '../alarm/motion-window.ts';
import type { Deed } from '../alarm/register.ts';
import type { Catalogue } from '../chain/catalogue.ts';
import type { ChainParts } from '../chain/chain.ts';
import type { Mount } from '../chain/mount/kinds.ts';
import type { Arrangement } from '../chain/proximity/arrangement/kinds.ts';
import type { Allowances } from '../chain/reading-allowances.ts';
import type { Transducer } from '../chain/transducer/kinds.ts';
import type { Policy } from '../demand/policy.ts';
import type { PointStatement } from '../demand/statement.ts';
import type { ZoneTable } from '../demand/zones/zone-table.ts';
import type { Train } from '../machine/train.ts';
import {
  choiceField,
  dateField,
  type Length,
  type Level,
  type Motion,
  optional,
  type Quantity,
  quantityField,
  type Sheet,
  type Stated,
  textField,
} from '../quantity/index.ts';
import type { separationSheet, wiringSheet } from '../wiring/statement.ts';

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
  runUp: optional(quantityField('time', 'From standstill to the highest speed', { example: '90 s' })),
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
  | {
      readonly from: 'table';
      readonly table: ZoneTable;
      /** Diametral clearance of the bearing, which holds limits of a shaft in it. */
      readonly clearance?: Stated<Length>;
    };

/** What the owner wants to be told, and when. */
export interface AlarmStatement {
  /** Level of this machine when it was known to be well. */
  readonly baseline: Stated<Level<Motion>>;
  readonly delay: Stated<Quantity<'time'>>;
  /** Delay of the trip where it is another than that of the alert. */
  readonly tripDelay?: Stated<Quantity<'time'>>;
  /** How the trip is decided; nothing is asked about it where nobody began to state it. */
  readonly logic?: Sheet<typeof alarmLogicSheet>;
  /** What the trip waits for, and how long it may take. */
  readonly response?: Sheet<typeof responseTimeSheet>;
  /** Further set points by name: a narrow band, a second trip. */
  readonly setPoints?: readonly SetPointStatement[];
}

/** A set point beside alert and trip. */
export interface SetPointStatement {
  readonly name: string;
  readonly does: Deed;
  readonly level: Stated<Level<Motion>>;
  readonly delay: Stated<Quantity<'time'>>;
  readonly because: string;
}

/** A point with the way from it to its input, the parts chosen, and the parts to be compared. */
export interface PlantPoint {
  readonly statement: PointStatement;
  /** Everything but transducer and mount. */
  readonly way: Omit<ChainParts, 'transducer' | 'mount'> | undefined;
  /** The length of the cable as stated, with how it is known; the way holds its value alone. */
  readonly statedLength?: Stated<number>;
  readonly chosen: { readonly transducer: Transducer; readonly mount: Mount } | undefined;
  readonly compared: { readonly transducers: readonly Transducer[]; readonly mounts: readonly Mount[] };
  readonly alarm: AlarmStatement | undefined;
  /** Limits of this point where they are others than those of its machine. */
  readonly limits?: LimitStatement;
  /** The shaft its probes look at; the one all speeds are counted in where nothing is said. */
  readonly shaft?: string;
  /** What its probes do: an XY pair, a thrust pair, the mark of each turn, the slow roll. */
  readonly probes?: readonly Arrangement[];
  /** Its screens and earths; nothing is asked about them where nobody began to state them. */
  readonly wiring?: Sheet<typeof wiringSheet>;
  /** A motion the machine works by, and how far it may go. */
  readonly window?: WindowStatement;
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
  /** Distances from power cables as the owner wants them kept. */
  readonly separation?: Sheet<typeof separationSheet>;
}
