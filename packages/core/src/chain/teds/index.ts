import type { AnyWorking } from '../../working/index.ts';
import { tedsWorking } from './working.ts';

export { type ByteList, byteList } from './byte-list.ts';
export { type EntryFromTeds, entryFromTeds, namesCalibration } from './catalogue-entry.ts';
export { pageChecksums } from './page-checksums.ts';
export { type Teds, type TedsValues, type Told, tedsBytes, tedsOf, toldOf } from './teds.ts';
export { templateKinds } from './templates/kinds.ts';
export * from './working.ts';

/** The formulas about the memory of a transducer. */
export const tedsWorkings: readonly AnyWorking[] = [tedsWorking];
