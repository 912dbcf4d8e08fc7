import {
  blocks,
  completenessFindings,
  type Design,
  type Finding,
  inOrderOfWeight,
  type Showing,
} from '@soundpost/core';
import {
  type DocumentRecord,
  documentRecord,
  type IssuedKind,
  type IssueFacts,
  type Issuing,
  issueFacts,
  setFindings,
} from '@soundpost/documents/document-set';
import { counted } from '../text/values-text.ts';

/** What is asked of an issue beside the plant. */
export interface AskedSet {
  readonly kinds: readonly IssuedKind[];
  readonly revision: string;
  readonly contentHash: string;
  readonly preliminary: boolean;
  readonly showing: Showing;
}

/** A set before any of it is set: what stands against it, and the records its documents are made from. */
export interface ComposedSet {
  readonly findings: readonly Finding[];
  /** Those of the findings that block. */
  readonly against: readonly Finding[];
  readonly blocked: boolean;
  readonly facts: IssueFacts;
  readonly records: readonly DocumentRecord[];
}

/** The design with what its completeness was found to lack. */
export function completeDesign(designed: Design): Design {
  return { ...designed, findings: inOrderOfWeight([...designed.findings, ...completenessFindings(designed)]) };
}

export function composedSet(design: Design, asked: AskedSet): ComposedSet {
  const { kinds, revision, contentHash, preliminary, showing } = asked;
  const records = (issuing: Issuing) => {
    const facts = issueFacts(design, issuing);
    return kinds.flatMap((kind) => documentRecord(kind, design, facts, showing) ?? []);
  };
  const asIssued = records({ revision, contentHash });
  const findings = inOrderOfWeight([...design.findings, ...setFindings(asIssued)]);
  const against = findings.filter((each) => each.weight === 'blocks-issue');
  const issuing: Issuing = {
    revision,
    contentHash,
    ...(preliminary ? { preliminary: preliminaryWords(against) } : {}),
  };
  const facts = issueFacts(design, issuing);
  return {
    findings,
    against,
    blocked: blocks(against),
    facts,
    records: asIssued.map((each) => ({ ...each, issue: facts })),
  };
}

function preliminaryWords(against: readonly Finding[]): string {
  if (against.length === 0) return 'issued for checking; no finding blocks it.';
  return `${counted(against.length, 'finding')} ${against.length === 1 ? 'blocks' : 'block'} the issue.`;
}
