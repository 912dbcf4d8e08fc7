import type { ByteSource } from '@soundpost/files';

const piece = 1 << 20;

/** SHA-256 of a file of any size, read in pieces. */
export async function fileHash(source: ByteSource): Promise<string> {
  const { createHash } = await import('node:crypto');
  const hash = createHash('sha256');
  for (let from = 0; from < source.size; from += piece) {
    hash.update(await source.read(from, Math.min(piece, source.size - from)));
  }
  return hash.digest('hex');
}
