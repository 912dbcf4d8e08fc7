export * from './main.ts';
