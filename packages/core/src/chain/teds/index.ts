import type { AnyWorking } from '../../working/index.ts';
import { tedsWorking } from './working.ts';

export { type ByteList, byteList } from './byte-list.ts';
export { type EntryFromTeds, entryFromTeds, namesCalibration } from './catalogue-entry.ts';
export { type CodingKindName, type CodingTerms, codingKinds } from './coding-kinds.ts';
export { pageChecksums } from './page-checksums.ts';
export { bytesInLayout, type Teds, type TedsValues, type Told, tedsBytes, tedsOf, toldOf } from './teds.ts';
export type { Template } from './template.ts';
export { templateKinds } from './templates/kinds.ts';
export {
  checkAgainstEarlier,
  type TranscribedField,
  type TranscribedLayout,
  transcribedByUser,
  transcribedEntry,
  transcribedTemplate,
} from './transcribed.ts';
export { typedValues } from './typed-values.ts';
export * from './working.ts';

/** The formulas about the memory of a transducer. */
export const tedsWorkings: readonly AnyWorking[] = [tedsWorking];
