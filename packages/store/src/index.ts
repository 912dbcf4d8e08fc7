export { largestRead, readBytes, writeWhole } from './folder.ts';
export * from './open-bytes.ts';
export { isUnfinished, type Replacing } from './whole-file.ts';
