export * from './finding.ts';
