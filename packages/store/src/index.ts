export * from './folder.ts';
export { isUnfinished, type Replacing } from './whole-file.ts';
