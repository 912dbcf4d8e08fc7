export * from './finding.ts';
export * from './measure.ts';
export * from './rule-text.ts';
