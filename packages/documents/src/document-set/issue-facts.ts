import { type Design, type Stated, valueIfStated } from '@soundpost/core';
import type { IssueFacts } from './record.ts';

/** What whoever issues says beside the plant file. */
export interface Issuing {
  /** In place of the revision the plant file states. */
  readonly revision?: string;
  readonly contentHash: string;
  /** Why nothing may be built from it. */
  readonly preliminary?: string;
}

/** The title block of an issue: from the plant file, with what the issuer said. What is not stated says so. */
export function issueFacts({ plant }: Design, { revision, contentHash, preliminary }: Issuing): IssueFacts {
  const { name, owner, project, revision: stated, date, preparedBy } = plant.title.values;
  const said = (entry: Stated<unknown> | undefined) => String(valueIfStated(entry) ?? 'not stated');
  return {
    plant: valueIfStated(name) ?? 'Plant without a name',
    owner: said(owner),
    project: said(project),
    revision: revision ?? said(stated),
    date: said(date),
    preparedBy: said(preparedBy),
    contentHash,
    ...(preliminary === undefined ? {} : { preliminary }),
  };
}
