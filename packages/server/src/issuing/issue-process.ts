import { basename } from 'node:path';
import { issue, manner, performed } from '@soundpost/commands';
import { issueSurroundings } from './issue-surroundings.ts';
import type { IssueAsked, IssueWord } from './protocol.ts';

/**
 * Issues one set in a process of its own: the server answers meanwhile, and to cancel is to end the process. What was
 * begun is then swept away by whoever started it; no revision is half there.
 */
process.once('message', async (said: { plant: string; out: string; asked: IssueAsked }) => {
  const tell = (word: IssueWord) => new Promise((sent) => process.send?.(word, undefined, {}, sent));
  try {
    await tell(await wordOf(said, (what, through) => void tell({ is: 'step', what, ...through })));
  } catch (error) {
    await tell({ is: 'refused', words: `Soundpost itself failed here: ${String(error)}` });
  }
  process.disconnect();
});

async function wordOf(
  { plant, out, asked }: { plant: string; out: string; asked: IssueAsked },
  step: (what: string, through?: { done: number; of: number }) => void,
): Promise<IssueWord> {
  const { revision, documents, forms, paper, preliminary, showing } = asked;
  const given = { plant, out, revision, documents, forms, paper, preliminary };
  const outcome = await performed(issue, issueSurroundings(step), given, manner(showing));
  const json = outcome.json as {
    readonly issued?: boolean;
    readonly folder: string;
    readonly written: boolean;
    readonly kept?: string;
    readonly blocking?: readonly unknown[];
  };
  if (json.issued === true) {
    const { folder, written, kept } = json;
    return { is: 'issued', name: basename(folder), written, ...(kept === undefined ? {} : { kept: basename(kept) }) };
  }
  if (json.issued === false) return { is: 'blocked', findings: json.blocking?.length ?? 0 };
  return { is: 'refused', words: outcome.lines.map((each) => each.text).join(' ') };
}

process.once('disconnect', () => process.exit());
