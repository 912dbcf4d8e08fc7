import {
  type Finding,
  type MeasuredRecord,
  type Missing,
  Refusal,
  type ServingChannel,
  type Session,
  type Writing,
} from '@soundpost/core';
import { type MeasuredRecording, measuredRecording, openRecording, readYaml, recordsReader } from '@soundpost/files';
import { folderOf, isAbsolutePath, pathIn, type Surroundings } from '../surroundings.ts';
import { withFactsBeside } from './facts-beside.ts';
import { fileHash } from './file-hash.ts';

/** A recording of a session: its file, what identifies it, and what was measured; or why it could not be read. */
export interface SessionRecording {
  readonly name: string;
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly refused?: string;
}

/** Everything that was recorded for an acceptance, measured. */
export interface MeasuredSession {
  readonly session: Session;
  readonly recordings: readonly SessionRecording[];
  readonly records: readonly MeasuredRecord[];
  readonly serving: readonly ServingChannel[];
  readonly findings: readonly Finding[];
  readonly questions: readonly Missing[];
}

/**
 * Reads a records file and measures every recording it names. A recording that cannot be read is told with the reason,
 * and the others are measured all the same. Throws Refusal where the records file itself cannot be read.
 */
export async function measuredSession(surroundings: Surroundings, path: string): Promise<MeasuredSession> {
  surroundings.step(`reading ${path}`);
  const { value: session, writing } = readYaml(await surroundings.readBytes(path), path, recordsReader);
  const recordings: SessionRecording[] = [];
  const measured: MeasuredRecording[] = [];
  for (const stated of session.recordings) {
    const file = isAbsolutePath(stated.file) ? stated.file : pathIn(folderOf(path), stated.file);
    surroundings.step(`measuring ${stated.file}`);
    const told = await measuredFile(surroundings, file, stated, writing);
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
  stated: Session['recordings'][number],
  writing: Writing,
): Promise<{ readonly recording: SessionRecording; readonly measured?: MeasuredRecording }> {
  const { name, file } = stated;
  const unread = { name, file, bytes: 0, sha256: '' };
  try {
    const opened = await surroundings.openFile(path);
    const identified = { name, file, bytes: opened.size, sha256: '' };
    try {
      const sha256 = await fileHash(opened);
      try {
        const measured = await measuredRecording(
          await withFactsBeside(surroundings, path, await openRecording(opened, file)),
          stated,
          writing,
        );
        return { recording: { ...identified, sha256 }, measured };
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
