export * from './appraisal.ts';
export * from './assumptions.ts';
export * from './flip-points.ts';
export { appraisalRules } from './rules.ts';
export * from './shortlist.ts';
