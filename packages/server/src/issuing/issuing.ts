import { fork } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { revisionFolder } from '@soundpost/commands';
import { takeLeftoversAway } from '@soundpost/store';
import { besidePlant } from './issued-folders.ts';
import type { IssueAsked, IssueWord } from './protocol.ts';

// It runs as it is built, also where this file runs from its source: a process is started from a file.
const program = fileURLToPath(new URL('../../dist/issuing/issue-process.js', import.meta.url));

/** Issues a set and tells how far it is. Ends with the signal: whatever was begun is swept away, nothing is half there. */
export async function issuing(
  plant: string,
  asked: IssueAsked,
  tell: (word: IssueWord) => void,
  signal: AbortSignal,
): Promise<void> {
  const out = besidePlant(plant, asked.folder);
  const child = fork(program, { execArgv: [], stdio: ['ignore', 'ignore', 'ignore', 'ipc'] });
  const cancel = () => child.kill('SIGKILL');
  signal.addEventListener('abort', cancel);
  let last: IssueWord | undefined;
  child.on('message', (word: IssueWord) => {
    last = word;
    tell(word);
  });
  const ended = new Promise<void>((settle) => {
    child.once('exit', () => settle());
    child.once('error', () => settle());
  });
  if (signal.aborted) cancel();
  else child.send({ plant, out, asked });
  await ended;
  signal.removeEventListener('abort', cancel);
  await takeLeftoversAway(join(out, revisionFolder(asked.revision))).catch(() => undefined);
  if (!signal.aborted && (last === undefined || last.is === 'step')) {
    tell({
      is: 'refused',
      words: 'The process that issues ended by itself, perhaps for want of memory. Nothing was issued.',
    });
  }
}
