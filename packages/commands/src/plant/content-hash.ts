/** SHA-256 over the files in the order in which they were read, each behind its length. */
export async function contentHashOf(files: readonly Uint8Array[]): Promise<string> {
  const parts = files.flatMap((each) => [new TextEncoder().encode(`${each.length}\n`), each]);
  const whole = new Uint8Array(parts.reduce((sum, each) => sum + each.length, 0));
  let at = 0;
  for (const each of parts) {
    whole.set(each, at);
    at += each.length;
  }
  return hex(await crypto.subtle.digest('SHA-256', whole));
}

export function hex(digest: ArrayBuffer): string {
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
