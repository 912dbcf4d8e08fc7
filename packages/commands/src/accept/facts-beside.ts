import { Refusal } from '@soundpost/core';
import { factsFileOf, type OpenRecording, withFacts } from '@soundpost/files';
import type { Surroundings } from '../surroundings.ts';

/** A WAV with what the file beside it says, where one lies there. */
export async function withFactsBeside(
  surroundings: Surroundings,
  path: string,
  opened: OpenRecording,
): Promise<OpenRecording> {
  const beside = factsFileOf(path);
  if (beside === undefined) return opened;
  const bytes = await surroundings.readBytes(beside).catch((error: unknown) => {
    // That none lies there is the usual case.
    if (error instanceof Refusal) return undefined;
    throw error;
  });
  return bytes === undefined ? opened : withFacts(opened, bytes, beside);
}
