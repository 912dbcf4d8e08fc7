import { type AcceptedRecording, type Recorded, Refusal, type StatedRecording, type Writing } from '@soundpost/core';
import {
  type ByteSource,
  type FallbackAnswers,
  type MeasuredRecording,
  measuredRecording,
  openRecording,
  type ReadingChoices,
  readYaml,
  recordsReader,
} from '@soundpost/files';
import { folderOf, isAbsolutePath, pathIn, type Surroundings } from '../surroundings.ts';
import { withFactsBeside } from './facts-beside.ts';
import { fileHash } from './file-hash.ts';

/**
 * Reads a records file and measures every recording it names. A recording that cannot be read is told with the reason,
 * and the others are measured all the same. Throws Refusal where the records file itself cannot be read.
 */
export async function measuredSession(
  surroundings: Surroundings,
  path: string,
  fallback: FallbackAnswers = {},
): Promise<Recorded> {
  surroundings.step(`reading ${path}`);
  const { value: session, writing } = readYaml(await surroundings.readBytes(path), path, recordsReader);
  const recordings: AcceptedRecording[] = [];
  const measured: MeasuredRecording[] = [];
  for (const stated of session.recordings) {
    const file = besideRecords(path, stated.file);
    surroundings.step(`measuring ${stated.file}`);
    const told = await measuredFile(surroundings, file, stated, writing, fallback);
    recordings.push(told.recording);
    if (told.measured !== undefined) measured.push(told.measured);
  }
  return {
    session,
    recordings,
    records: measured.flatMap((each) => each.records),
    serving: measured.flatMap((each) => each.serving),
    findings: measured.flatMap((each) => each.findings),
    questions: measured.flatMap((each) => each.questions),
  };
}

async function measuredFile(
  surroundings: Surroundings,
  path: string,
  stated: StatedRecording,
  writing: Writing,
  fallback: FallbackAnswers,
): Promise<{ readonly recording: AcceptedRecording; readonly measured?: MeasuredRecording }> {
  const { name, file } = stated;
  const unread = { name, file, bytes: 0, sha256: '', channels: [] };
  try {
    const opened = await surroundings.openFile(path);
    const identified = { ...unread, bytes: opened.size };
    try {
      const told = withProgress(surroundings, opened, `reading ${file}`);
      const sha256 = await fileHash(told);
      try {
        const measured = await measuredRecording(
          await withFactsBeside(surroundings, path, await openRecording(told, file, choicesOf(stated))),
          stated,
          writing,
          fallback,
        );
        const { form, start, channels } = measured;
        return {
          recording: { ...identified, sha256, form, ...(start === undefined ? {} : { start }), channels },
          measured,
        };
      } catch (error) {
        if (error instanceof Refusal) return { recording: { ...identified, sha256, refused: error.message } };
        throw error;
      }
    } finally {
      await opened.close();
    }
  } catch (error) {
    if (error instanceof Refusal) return { recording: { ...unread, refused: error.message } };
    throw error;
  }
}

/** How a text whose numbers can be read in two ways is to be read, as the records file says. */
function choicesOf({ answers }: StatedRecording): ReadingChoices {
  const { sign, separator } = answers.values;
  return {
    ...(sign?.known === true ? { decimal: sign.value } : {}),
    ...(separator?.known === true ? { separator: separator.value } : {}),
  };
}

/** Where a recording stands: the records file names it from where it stands itself. */
function besideRecords(records: string, file: string): string {
  const folder = folderOf(records);
  return isAbsolutePath(file) || folder === '.' ? file : pathIn(folder, file);
}

const eachTold = 64 * 2 ** 20;

/** Tells how far a file has been read, for whoever waits for a large one. */
function withProgress(surroundings: Surroundings, source: ByteSource, words: string): ByteSource {
  const { size, readNow } = source;
  let next = eachTold;
  const tell = (from: number) => {
    if (from < next - eachTold) next = eachTold;
    if (from < next) return;
    next = from + eachTold;
    const megabytes = (bytes: number) => Math.round(bytes / 2 ** 20);
    surroundings.step(`${words}, MB`, { done: megabytes(from), of: megabytes(size) });
  };
  const told =
    <Read>(read: (from: number, length: number) => Read) =>
    (from: number, length: number): Read => {
      tell(from);
      return read(from, length);
    };
  return { size, read: told(source.read), ...(readNow === undefined ? {} : { readNow: told(readNow) }) };
}
