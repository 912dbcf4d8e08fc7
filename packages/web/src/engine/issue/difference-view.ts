import type { RevisionDifference } from '@soundpost/commands/pure';
import { type Cause, type ProofChange, reason, type Said, type Showing, showMeasure } from '@soundpost/core';
import { issuedKinds } from '@soundpost/documents/document-set';

/** Which stated changes move something, by their numbers, and how. */
export interface CauseView {
  readonly changes: readonly number[];
  readonly acting: Cause['acting'];
}

export interface ProofView {
  readonly at: string;
  readonly target: string;
  readonly before: ProofChange['before'];
  readonly after: ProofChange['after'];
  readonly why: string;
}

/** What one revision says otherwise than another, in the reader's units. */
export interface DifferenceView {
  readonly stated: readonly {
    readonly where: string;
    readonly before: string | undefined;
    readonly after: string | undefined;
    readonly notAlone: boolean;
  }[];
  readonly values: readonly {
    readonly key: string;
    readonly at: string;
    readonly sort: string;
    readonly name: string;
    readonly before: string | undefined;
    readonly after: string | undefined;
    readonly cause: CauseView;
  }[];
  readonly sheets: readonly {
    readonly key: string;
    readonly document: string;
    readonly sheet: string;
    readonly is: string;
    readonly cause: CauseView;
  }[];
  readonly unproven: readonly ProofView[];
  readonly proven: readonly ProofView[];
  readonly withdrawn: readonly { readonly at: string; readonly target: string }[];
  readonly tests: readonly { readonly at: string; readonly because: string }[];
}

const untold: Cause = { changes: [], acting: 'not told apart' };

export function differenceView(difference: RevisionDifference, showing: Showing): DifferenceView {
  const { stated, design, sheets, causes, notAlone } = difference;
  const shown = (says: Said | undefined) => (says === undefined ? undefined : showMeasure(says, showing));
  const causeOf = (key: string): CauseView => {
    const { changes, acting } = causes.get(key) ?? untold;
    return { changes: changes.map((each) => each + 1), acting };
  };
  const proof = ({ at, target, before, after, decides }: ProofChange): ProofView => ({
    at,
    target,
    before,
    after,
    why: decides === undefined ? '' : reason(decides, showing),
  });
  return {
    stated: stated.map(({ catalogue, path, before, after }, place) => ({
      where: `${catalogue === undefined ? '' : `catalogue ${catalogue}: `}${path.join('/') || 'the whole file'}`,
      before: short(before),
      after: short(after),
      notAlone: notAlone.includes(place),
    })),
    values: design.changes.map(({ key, at, sort, name, before, after }) => ({
      key,
      at,
      sort,
      name,
      before: shown(before),
      after: shown(after),
      cause: causeOf(key),
    })),
    sheets: sheets.map(({ key, document, sheet, is }) => ({
      key,
      document: issuedKinds.find((each) => each.kind === document)?.title ?? document,
      sheet,
      is,
      cause: causeOf(key),
    })),
    unproven: design.unproven.map(proof),
    proven: design.proven.map(proof),
    withdrawn: design.withdrawn,
    tests: design.testsToRepeat.map(({ at, because }) => ({
      at,
      because: because[0] === 'new' ? 'not tested yet' : `${because.join(', ')} changed`,
    })),
  };
}

/** An entry that is new or gone can be a whole machine. */
function short(text: string | undefined): string | undefined {
  const plain = text?.replace(/\s+/g, ' ');
  return plain === undefined || plain.length <= 240 ? plain : `${plain.slice(0, 237)}…`;
}
