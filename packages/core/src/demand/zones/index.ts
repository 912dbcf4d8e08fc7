import type { AnyWorking } from '../../working/index.ts';
import { shaftAcceptanceWorking } from './shaft-acceptance.ts';
import { shaftLimitsWorking } from './shaft-limits.ts';

export * from './clearance.ts';
export * from './scope.ts';
export * from './shaft-acceptance.ts';
export * from './shaft-limits.ts';
export * from './tables/tables.ts';
export * from './zone-of.ts';
export * from './zone-table.ts';

/** The formulas of the zones. */
export const zoneWorkings: readonly AnyWorking[] = [shaftLimitsWorking, shaftAcceptanceWorking];
