/** What the screens share with the commands: nothing of it reads, writes or asks a clock. */

export { acceptanceFile } from './accept/acceptance-file.ts';
export { measuredSession } from './accept/measured-session.ts';
export { type RevisionDifference, revisionDifference, type SheetChange } from './changes/revision-difference.ts';
export { tableOfTexts } from './import/edited-table.ts';
export { type EditedFile, readEdited } from './import/read-edited.ts';
export { roundTrips } from './import/round-trip-places.ts';
export { bytesOf, type HandedIn, type Understanding, understanding } from './import/understanding.ts';
export type { UnderstoodCell, UnderstoodTable } from './import/understood-table.ts';
export { type ComposedSet, completeDesign, composedSet } from './issue/composed-set.ts';
export { nextRevision, revisionFolder } from './issue/revision-names.ts';
export { acceptanceJson } from './json/acceptance-json.ts';
export type { RehearsedChain } from './json/rehearsal-json.ts';
export { contentHashOf } from './plant/content-hash.ts';
export type { StatedTexts } from './plant/stated-texts.ts';
export { rehearsalFiles, type WrittenFile } from './rehearsal-files.ts';
export { givenCourse } from './rehearse/given-course.ts';
export { givenOccasion, occasionWords } from './rehearse/given-occasion.ts';
export { type ChainChanges, otherChain } from './rehearse/other-chain.ts';
export { type Rehearsal, type RehearsalAsked, rehearsing, usualRate, usualSeconds } from './rehearse/rehearsal.ts';
export { defectTyped, faultTyped } from './rehearse/typed.ts';
export { seed } from './seed.ts';
export type { Content, Surroundings } from './surroundings.ts';
