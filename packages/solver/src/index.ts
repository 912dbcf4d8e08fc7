export * from './solve.ts';
export * from './solve-aside.ts';
