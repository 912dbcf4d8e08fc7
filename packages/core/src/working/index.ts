export * from './printed.ts';
export * from './working.ts';
