export * from './working.ts';
