import type { DocumentKind } from './document-kind.ts';
import { proofReportKind } from './proof-report.ts';

/** Every kind of document. */
export const documentKinds: readonly DocumentKind[] = [proofReportKind];
