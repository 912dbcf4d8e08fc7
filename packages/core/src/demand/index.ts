export * from './demand.ts';
export * from './frequency-reference.ts';
export * from './measuring-point.ts';
export { observables } from './observables/kinds.ts';
export type { NoiseBandwidth, Observable } from './observables/observable.ts';
export * from './policy.ts';
export * from './statement.ts';
export * from './target.ts';
export * from './zones/index.ts';
