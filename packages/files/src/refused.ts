import { UnreadableFile } from './file-refusal.ts';

/** For tests: the bytes of a text. */
export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** For tests: what an attempt is refused with; anything else it ends with is an error of ours. */
export function refused(attempt: () => unknown): UnreadableFile {
  try {
    attempt();
  } catch (error) {
    if (error instanceof UnreadableFile) return error;
    throw error;
  }
  throw new Error('expected UnreadableFile, but it was read');
}
