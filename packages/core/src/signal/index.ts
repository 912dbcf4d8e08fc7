export * from './complex.ts';
