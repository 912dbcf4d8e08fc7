import { createHash, randomBytes } from 'node:crypto';
import { readlinkSync } from 'node:fs';
import { lstat, readdir, unlink } from 'node:fs/promises';
import { hostname } from 'node:os';
import { basename, join } from 'node:path';

/**
 * A file that is being written is named for who writes it: the machine and its numbering of processes, the process, a
 * random part, and a check value over all of it. What a process left over that runs no longer can then be told from
 * what another one, or another machine on a share, is writing just now, and from what merely looks like it.
 */
export function unfinishedName(writer = process.pid): string {
  const own = `${thisMachine}-${writer}-${randomBytes(8).toString('hex')}`;
  return `.soundpost-${own}-${checkOf(own)}.part`;
}

/** The name of a file that is being written, or was left over; also one of an earlier Soundpost, which named no writer. */
export function isUnfinished(path: string): boolean {
  return /^\.soundpost-[0-9a-f-]{16,60}\.part$/.test(basename(path));
}

/**
 * Takes away what writers of this machine left over in a folder that run no longer: plain files whose name proves it.
 * Everything else stays, also what a process of the same number might be writing.
 */
export async function takeUnfinishedAway(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    const writer = writerOf(name);
    if (writer === undefined || isRunning(writer)) continue;
    const path = join(folder, name);
    const stands = await lstat(path).catch(() => undefined);
    if (stands?.isFile() === true) await unlink(path).catch(() => undefined);
  }
}

/** The process of this machine that a name was given by; undefined where it was given by anybody else. */
function writerOf(name: string): number | undefined {
  const [, own = '', machine, writer, check] =
    /^\.soundpost-(([0-9a-f]{8})-(\d{1,10})-[0-9a-f]{16})-([0-9a-f]{8})\.part$/.exec(name) ?? [];
  return machine === thisMachine && check === checkOf(own) ? Number(writer) : undefined;
}

export function isRunning(writer: number): boolean {
  try {
    process.kill(writer, 0);
    return true;
  } catch (error) {
    return !(error instanceof Error && 'code' in error && error.code === 'ESRCH');
  }
}

const digest = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 8);
const checkOf = (own: string): string => digest(`soundpost unfinished ${own}`);
const thisMachine = digest(`${hostname()} ${numbering()}`);

/** Containers of one machine number their processes each for itself; elsewhere there is one numbering. */
function numbering(): string {
  try {
    return readlinkSync('/proc/self/ns/pid');
  } catch {
    return '';
  }
}
