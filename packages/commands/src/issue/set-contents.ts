import { Refusal } from '@soundpost/core';
import type { IssueFacts } from '@soundpost/documents/document-set';
import type { FrozenTexts } from '../plant/stated-texts.ts';
import { type Content, pathIn, type Surroundings } from '../surroundings.ts';

/** The file of an issue that lists the others; it is written last. */
export const contentsName = 'contents.json';

/** A file of an issue, not yet written. */
export interface IssuedFile {
  /** From the folder of the revision. */
  readonly path: string;
  readonly title: string;
  readonly content: Content;
  /** Of a PDF. */
  readonly pages?: number;
}

/** A file of an issue as its contents list it. */
export interface ListedFile {
  readonly path: string;
  readonly title: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly pages?: number;
}

/** What is read back of an issue that stands. */
export interface StandingContents {
  readonly revision?: unknown;
  readonly contentHash?: unknown;
  readonly preliminary?: unknown;
  readonly files?: readonly Partial<ListedFile>[];
}

/** Writes a file of an issue and says how it is listed: what is made piece by piece is made once. */
export async function written(
  { path, title, content, pages }: IssuedFile,
  write: (content: Content) => Promise<void>,
): Promise<ListedFile> {
  const { createHash } = await import('node:crypto');
  const hash = createHash('sha256');
  let bytes = 0;
  const seen = <Piece extends string | Uint8Array>(piece: Piece): Piece => {
    hash.update(piece);
    bytes += typeof piece === 'string' ? Buffer.byteLength(piece) : piece.length;
    return piece;
  };
  await write(typeof content === 'string' || content instanceof Uint8Array ? seen(content) : eachSeen(content, seen));
  return { path, title, sha256: hash.digest('hex'), bytes, ...(pages === undefined ? {} : { pages }) };
}

/** Each write is a turn of the event loop: thousands of small ones cost more than what they write. */
const writtenAtOnce = 256 * 1024;

function* eachSeen(content: Iterable<string>, seen: (piece: string) => string): Generator<string> {
  let held: string[] = [];
  let length = 0;
  for (const piece of content) {
    held.push(piece);
    length += piece.length;
    if (length < writtenAtOnce) continue;
    yield seen(held.join(''));
    held = [];
    length = 0;
  }
  yield seen(held.join(''));
}

/** What a set holds: each file with its hash, so that a mixed or half-copied set can be told from a whole one. */
export function issuedContents(
  facts: IssueFacts,
  files: readonly ListedFile[],
  preliminary: boolean,
  stated: FrozenTexts,
): string {
  const { plant, revision, date, contentHash } = facts;
  return `${JSON.stringify({ soundpost: 'issue', plant, revision, date, contentHash, preliminary, stated, files }, null, 2)}\n`;
}

/**
 * What was issued before as this revision and stays as it is; nothing where it may be written over, since it was
 * preliminary. Throws Refusal where it was issued from other content.
 */
export async function frozenBefore(
  surroundings: Surroundings,
  folder: string,
  revision: string,
  contentHash: string,
): Promise<StandingContents | undefined> {
  const before = await contentsIn(surroundings, folder);
  if (before === undefined || before.preliminary === true) return undefined;
  if (before.contentHash === contentHash) return before;
  throw stays(`revision ${revision}, issued before from other content`);
}

/** Throws Refusal unless a frozen revision holds exactly these files. */
export function refuseOthers({ revision, files = [] }: StandingContents, now: readonly ListedFile[]): void {
  const before = new Map(files.map((each) => [each.path, each.sha256]));
  const same = before.size === now.length && now.every((each) => before.get(each.path) === each.sha256);
  if (!same) throw stays(`revision ${revision}, issued before with other documents, forms, paper or units`);
}

function stays(read: string): Refusal {
  return new Refusal({
    read,
    expected: 'a revision that is not issued yet',
    suggestion: 'What is issued stays as it is: give the next revision with --revision.',
  });
}

async function contentsIn(surroundings: Surroundings, folder: string): Promise<StandingContents | undefined> {
  try {
    const bytes = await surroundings.readBytes(pathIn(folder, contentsName));
    return JSON.parse(new TextDecoder().decode(bytes)) as StandingContents;
  } catch {
    return undefined;
  }
}
