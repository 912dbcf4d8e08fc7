export { type DocumentKind, type DocumentOptions, documentKind } from './document-kind.ts';
export * from './drawing/index.ts';
export { documentKinds } from './kinds.ts';
export { proofReport } from './proof-report.ts';
