import { Refusal } from '@soundpost/core';
import type { IssueFacts } from '@soundpost/documents/document-set';
import type { FrozenTexts } from '../plant/stated-texts.ts';
import { pathIn, type Surroundings } from '../surroundings.ts';

/** A file of an issue, not yet written. */
export interface IssuedFile {
  /** From the folder of the revision. */
  readonly path: string;
  readonly title: string;
  readonly content: string | Uint8Array;
}

interface Contents {
  readonly revision?: unknown;
  readonly contentHash?: unknown;
  readonly preliminary?: unknown;
}

/** What a set holds: each file with its hash, so that a mixed or half-copied set can be told from a whole one. */
export async function issuedContents(
  facts: IssueFacts,
  files: readonly IssuedFile[],
  preliminary: boolean,
  stated: FrozenTexts,
): Promise<string> {
  const { createHash } = await import('node:crypto');
  const { plant, revision, date, contentHash } = facts;
  const listed = files.map(({ path, title, content }) => ({
    path,
    title,
    sha256: createHash('sha256').update(content).digest('hex'),
  }));
  return `${JSON.stringify({ soundpost: 'issue', plant, revision, date, contentHash, preliminary, stated, files: listed }, null, 2)}\n`;
}

/** Refuses to write over a revision that was issued from other content; what was preliminary may be written over. */
export async function refuseIssued(
  surroundings: Surroundings,
  folder: string,
  revision: string,
  contentHash: string,
): Promise<void> {
  const before = await contentsIn(surroundings, folder);
  if (before === undefined || before.preliminary === true || before.contentHash === contentHash) return;
  throw new Refusal({
    read: `revision ${revision}, issued before from other content`,
    expected: 'a revision that is not issued yet',
    suggestion: 'What is issued stays as it is: give the next revision with --revision.',
  });
}

async function contentsIn(surroundings: Surroundings, folder: string): Promise<Contents | undefined> {
  try {
    const bytes = await surroundings.readBytes(pathIn(folder, 'contents.json'));
    return JSON.parse(new TextDecoder().decode(bytes)) as Contents;
  } catch {
    return undefined;
  }
}
