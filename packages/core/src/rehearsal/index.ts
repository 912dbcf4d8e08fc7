export type { CourseTerm } from './course.ts';
export * from './fault/fault-kind.ts';
export * from './fault/kinds.ts';
export * from './rehearsed-motion.ts';
export * from './script.ts';
export * from './through-chain.ts';
