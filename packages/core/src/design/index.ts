export * from './design.ts';
export * from './machine-limits.ts';
export * from './plant.ts';
export * from './point-alarms.ts';
export * from './point-budgets.ts';
export * from './point-probes.ts';
export * from './point-shortlist.ts';
export * from './questions.ts';
