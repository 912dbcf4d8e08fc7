export { largestRead, readBytes, writeWhole, writeWholeFolder } from './folder.ts';
export type { Listing } from './listed-files.ts';
export * from './open-bytes.ts';
export { takeLeftoversAway } from './staged-folder.ts';
export { isUnfinished, takeUnfinishedAway } from './unfinished-file.ts';
export type { Replacing } from './whole-file.ts';
export { asideOf, type Filled, recoveredFolders } from './whole-folder.ts';
