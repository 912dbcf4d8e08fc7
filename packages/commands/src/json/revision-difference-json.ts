import { measureJson, type ProofChange, type Said } from '@soundpost/core';
import type { RevisionDifference } from '../changes/revision-difference.ts';
import type { StatedTexts } from '../plant/stated-texts.ts';
import { judgementJson } from './judgement-json.ts';

export function revisionDifferenceJson(
  before: StatedTexts,
  after: StatedTexts,
  difference: RevisionDifference,
): unknown {
  const { stated, design, sheets, causes, notAlone } = difference;
  return {
    old: comparedJson(before),
    new: comparedJson(after),
    stated: stated.map((each, place) => ({
      ...(each.catalogue === undefined ? {} : { catalogue: each.catalogue }),
      path: each.path,
      ...(each.before === undefined ? {} : { before: each.before }),
      ...(each.after === undefined ? {} : { after: each.after }),
      ...(notAlone.includes(place) ? { notAlone: true } : {}),
    })),
    derived: design.changes.map(({ key, sort, at, name, before: old, after: now }) => ({
      sort,
      at,
      name,
      ...saidJson('before', old),
      ...saidJson('after', now),
      because: causes.get(key),
    })),
    sheets: sheets.map(({ key, document, sheet, is }) => ({ document, sheet, is, because: causes.get(key) })),
    unproven: design.unproven.map(proofChangeJson),
    proven: design.proven.map(proofChangeJson),
    withdrawn: design.withdrawn,
    testsToRepeat: design.testsToRepeat,
  };
}

function comparedJson({ from, revision }: StatedTexts): unknown {
  return { from, ...(revision === undefined ? {} : { revision }) };
}

function saidJson(name: string, says: Said | undefined): object {
  return says === undefined ? {} : { [name]: measureJson(says) };
}

function proofChangeJson({ at, target, before, after, decides }: ProofChange): unknown {
  return { at, target, before, after, ...(decides === undefined ? {} : { decides: judgementJson(decides) }) };
}
