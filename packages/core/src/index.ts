export * from './acquisition/index.ts';
export * from './alarm/index.ts';
export * from './chain/index.ts';
export * from './demand/index.ts';
export * from './design/index.ts';
export * from './finding/index.ts';
export * from './machine/index.ts';
export * from './printed-numbers.ts';
export * from './quantity/index.ts';
// Two rooms have a word for this; outside it means the exact fraction of a decimal.
export { exactly } from './quantity/index.ts';
export * from './rooms.ts';
export * from './selection/index.ts';
export { type Complex, magnitude as magnitudeOf } from './signal/complex.ts';
export { type WindowKind, windowKinds } from './signal/index.ts';
export * from './source/index.ts';
export * from './uncertainty/index.ts';
export * from './working/index.ts';
export * from './workings.ts';
