export * from './complex.ts';
export * from './filters.ts';
export * from './windows/kinds.ts';
export * from './windows/window.ts';
