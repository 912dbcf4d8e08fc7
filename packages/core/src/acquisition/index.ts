export * from './set-kind.ts';
export * from './sets.ts';
export * from './spectrum-set.ts';
export * from './turns.ts';
