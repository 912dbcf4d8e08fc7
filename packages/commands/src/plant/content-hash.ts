/** SHA-256 over the files in the order in which they were read, each behind its length. */
export async function contentHashOf(files: readonly Uint8Array[]): Promise<string> {
  const { createHash } = await import('node:crypto');
  const hash = createHash('sha256');
  for (const each of files) hash.update(`${each.length}\n`).update(each);
  return hash.digest('hex');
}
