import { kinds } from '@soundpost/core';
import { otherThanUtf8 } from '../encoding.ts';
import type { ByteSource } from './byte-source.ts';
import { matFormat } from './mat/mat-format.ts';
import { type OpenRecording, type ReadingChoices, type RecordingFormat, refusedAt } from './open-recording.ts';
import { textFormat } from './text/text-format.ts';
import { universalFormat } from './universal/universal-format.ts';
import { wavFormat } from './wav/wav-format.ts';
import { narrowed, wideTextIn } from './wide-text.ts';

/** Every format that is read. The first that recognises a file reads it; text, which nearly anything may be, is last. */
export const recordingFormats: readonly RecordingFormat[] = kinds(wavFormat, universalFormat, matFormat, textFormat);

/**
 * Reads the head of a recording, whichever format it is in. What it does not say stays unknown; what only the whole file
 * can tell is told by `surveyed`. Throws Refusal.
 */
export async function openRecording(
  source: ByteSource,
  file: string,
  choices: ReadingChoices = {},
): Promise<OpenRecording> {
  const first = await source.read(0, 1024);
  if (first.length === 0) throw refusedAt(file, 'the whole of it', { read: '', expected: 'a recording' });
  const wide = wideTextIn(first);
  if (wide !== undefined) {
    const opened = await textFormat.open(narrowed(source, wide), file, choices);
    return { ...opened, recording: { ...opened.recording, form: `${opened.recording.form}, in UTF-16` } };
  }
  const format = recordingFormats.find((each) => each.recognises(first));
  if (format === undefined) {
    const looks = otherThanUtf8(first);
    throw refusedAt(file, 'its first bytes', {
      read: looks?.what ?? [...first.subarray(0, 8)].map((byte) => byte.toString(16).padStart(2, '0')).join(' '),
      expected: `a recording: ${recordingFormats.map(({ name }) => name).join(', ')}`,
      ...(looks === undefined ? {} : { suggestion: looks.instead }),
    });
  }
  return format.open(source, file, choices);
}
