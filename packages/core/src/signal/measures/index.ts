export * from './digital-filter.ts';
export * from './gathering.ts';
export * from './moments.ts';
export * from './power-density.ts';
export * from './quantisation-step.ts';
export * from './values-histogram.ts';
