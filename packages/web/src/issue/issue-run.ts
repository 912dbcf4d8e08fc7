import type { IssueAsked, IssueWord } from '@soundpost/server/protocol';

/** How an issue ended. */
export type Ended = Exclude<IssueWord, { is: 'step' }> | { readonly is: 'cancelled' };

/** An issue under way or ended; it goes on while another view is looked at. */
export interface IssueRun {
  readonly steps: readonly string[];
  readonly done: number;
  readonly of: number;
  readonly ended: Ended | undefined;
}

let run: IssueRun | undefined;
let cancelling: AbortController | undefined;
const listeners = new Set<() => void>();

function put(next: IssueRun): void {
  run = next;
  if (next.ended === undefined) addEventListener('beforeunload', askBeforeLeaving);
  else removeEventListener('beforeunload', askBeforeLeaving);
  for (const listener of listeners) listener();
}

/** To close the page ends the request, and so the issue: the browser asks first. */
function askBeforeLeaving(event: BeforeUnloadEvent): void {
  event.preventDefault();
}

export const issueRun = {
  subscribe: (listener: () => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  snapshot: () => run,
};

export function cancelIssue(): void {
  cancelling?.abort();
}

export async function startIssue(asked: IssueAsked): Promise<void> {
  cancelling = new AbortController();
  put({ steps: [], done: 0, of: asked.documents.length, ended: undefined });
  try {
    const response = await fetch('/api/issues', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(asked),
      signal: cancelling.signal,
    });
    if (!response.ok || response.body === null) {
      end({ is: 'refused', words: await response.text() });
      return;
    }
    let rest = '';
    const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      const lines = (rest + part.value).split('\n');
      rest = lines.pop() ?? '';
      for (const line of lines) told(JSON.parse(line) as IssueWord);
    }
    if (run?.ended === undefined)
      end({ is: 'refused', words: 'The server ended before it was done. Nothing was issued.' });
  } catch (error) {
    if (cancelling.signal.aborted) end({ is: 'cancelled' });
    else
      end({ is: 'refused', words: `The server does not answer (${String(error)}). Nothing can be issued without it.` });
  }
}

function told(word: IssueWord): void {
  if (word.is !== 'step') end(word);
  else if (word.of === undefined) put({ ...run!, steps: [word.what] });
  else put({ ...run!, steps: [...run!.steps, word.what], done: word.done ?? 0, of: word.of });
}

function end(ended: Ended): void {
  put({ ...run!, ended, done: ended.is === 'issued' ? run!.of : run!.done });
}
