export * from './finding.ts';
export * from './measure.ts';
