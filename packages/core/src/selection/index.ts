export * from './appraisal.ts';
export * from './assumptions.ts';
export * from './flip-points.ts';
export * from './shortlist.ts';
