import type { IssuedRevisions, IssuedTexts } from '@soundpost/server/protocol';
import { useEffect, useState } from 'react';
import type { Ended } from './issue-run.ts';

/** The revisions in a folder beside the plant, or why they are not known. */
export interface IssuedBefore {
  readonly issued: IssuedRevisions | undefined;
  readonly words: string | undefined;
}

/** Asked anew when another folder is named and when an issue has ended. */
export function useIssued(folder: string, ended: Ended | undefined): IssuedBefore {
  const [before, setBefore] = useState<IssuedBefore>({ issued: undefined, words: undefined });
  // biome-ignore lint/correctness/useExhaustiveDependencies: what stands is asked anew when an issue has ended
  useEffect(() => {
    let stale = false;
    const put = (next: IssuedBefore) => {
      if (!stale) setBefore(next);
    };
    if (folder === '') {
      put({ issued: undefined, words: 'A folder beside the plant file is needed.' });
      return;
    }
    fetch(`/api/issues/${encodeURIComponent(folder)}`).then(
      async (answer) =>
        put(
          answer.ok
            ? { issued: (await answer.json()) as IssuedRevisions, words: undefined }
            : { issued: undefined, words: await answer.text() },
        ),
      () => put({ issued: undefined, words: 'The server does not answer: what was issued before is not known here.' }),
    );
    return () => {
      stale = true;
    };
  }, [folder, ended]);
  return before;
}

/** What an issued revision was made from. Throws in words, and when it is stopped. */
export async function issuedTexts(folder: string, name: string, stopped?: AbortSignal): Promise<IssuedTexts> {
  const address = `/api/issues/${encodeURIComponent(folder)}/${encodeURIComponent(name)}/stated`;
  const answer = await fetch(address, stopped === undefined ? {} : { signal: stopped });
  if (!answer.ok) throw new Error(await answer.text());
  return (await answer.json()) as IssuedTexts;
}
