export type { CourseTerm } from './course.ts';
export * from './defect/defect-kind.ts';
export { exchanged } from './defect/exchanged.ts';
export * from './defect/kinds.ts';
export * from './fault/fault-kind.ts';
export * from './fault/kinds.ts';
export * from './rehearsed-motion.ts';
export * from './script.ts';
export * from './through-chain.ts';
