export * from './appraisal.ts';
export * from './shortlist.ts';
