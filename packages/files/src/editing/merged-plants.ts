import { Refusal } from '@soundpost/core';
import { isMap, isSeq, type Node } from 'yaml';
import { lexemesOf } from '../yaml-lexemes.ts';
import { applyEdits, yamlAt } from './apply-edits.ts';
import type { Edit } from './edit.ts';
import { latelyRead } from './lately-read.ts';
import { oneLine } from './yaml-fragment.ts';
import { entriesOf, rootOf } from './yaml-source.ts';

/** A place that both sides changed, each in its own way; the YAML text of each, where something stands there. */
export interface MergeConflict {
  readonly path: Edit['path'];
  readonly base?: string;
  readonly mine?: string;
  readonly theirs?: string;
}

/**
 * Two plant files made from one, brought together by the places in them. What one side alone changed is taken from
 * there; what both changed alike is taken once; what they changed differently stays as theirs and is listed. The text is
 * theirs with my changes put in. Lists are merged element by element where all three have as many, else as a whole. My
 * comments on places I did not change are listed as a conflict of the whole file where they are not in the result.
 */
export function mergedPlants(
  base: string,
  mine: string,
  theirs: string,
): { readonly text: string; readonly conflicts: readonly MergeConflict[] } {
  if (mine === base || mine === theirs) return { text: theirs, conflicts: [] };
  if (theirs === base) return { text: mine, conflicts: [] };
  try {
    const merge = new Merge({ base, mine, theirs });
    const { text } = applyEdits(theirs, merge.edits);
    const unheard = remarksLost(base, mine, text);
    return { text, conflicts: unheard === '' ? merge.conflicts : [...merge.conflicts, { path: [], mine: unheard }] };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { text: theirs, conflicts: [{ path: [], base, mine, theirs }] };
  }
}

interface Texts {
  readonly base: string;
  readonly mine: string;
  readonly theirs: string;
}

/** What stands at one place on each side; undefined where the place is missing there. */
interface Three {
  readonly base: Place | undefined;
  readonly mine: Place | undefined;
  readonly theirs: Place | undefined;
}

interface Place {
  readonly node: Node | undefined;
}

class Merge {
  readonly edits: Edit[] = [];
  readonly conflicts: MergeConflict[] = [];
  readonly #texts: Texts;

  constructor(texts: Texts) {
    this.#texts = texts;
    const root = (text: string): Place => ({ node: rootOf(latelyRead(text)) });
    this.#at([], { base: root(texts.base), mine: root(texts.mine), theirs: root(texts.theirs) }, undefined);
  }

  #at(path: Edit['path'], three: Three, before: string | number | undefined): void {
    const { base, mine, theirs } = three;
    if (same(mine, base) || same(mine, theirs)) return;
    const inside = keysInside(three);
    if (inside !== undefined) {
      for (const key of inside) {
        const entry = (place: Place | undefined) => entriesOf(place?.node).find((each) => each.key === key);
        const next = follower(key, three);
        this.#at([...path, key], { base: entry(base), mine: entry(mine), theirs: entry(theirs) }, next);
      }
      return;
    }
    const own = mine === undefined ? undefined : yamlAt(this.#texts.mine, path);
    if (same(theirs, base)) {
      this.edits.push({ path, yaml: own, ...(before === undefined || theirs !== undefined ? {} : { before }) });
      return;
    }
    this.conflicts.push({
      path,
      ...this.#said('base', path),
      ...this.#said('mine', path),
      ...this.#said('theirs', path),
    });
  }

  #said(side: keyof Texts, path: Edit['path']): Partial<Texts> {
    const text = yamlAt(this.#texts[side], path);
    return text === undefined ? {} : { [side]: text };
  }
}

/** The keys to look into where that is possible: mappings on both sides, or lists of one length on all three. */
function keysInside({ base, mine, theirs }: Three): readonly (string | number)[] | undefined {
  const keys = (place: Place | undefined) => entriesOf(place?.node).map(({ key }) => key);
  if (isMap(mine?.node) && isMap(theirs?.node) && (base === undefined || isMap(base.node))) {
    // From the last to the first: what is new finds the entry it stands before.
    return [...new Set([...keys(theirs), ...keys(base), ...keys(mine).toReversed()])];
  }
  if (!isSeq(base?.node) || !isSeq(mine?.node) || !isSeq(theirs?.node)) return undefined;
  const [first, ...others] = [keys(base), keys(mine), keys(theirs)];
  return others.every((each) => each.length === first!.length) ? first : undefined;
}

/** The entry of mine that follows and that will stand in the result. */
function follower(key: string | number, { base, mine, theirs }: Three): string | number | undefined {
  if (typeof key === 'number') return undefined;
  const keys = (place: Place | undefined) => entriesOf(place?.node).map((each) => each.key);
  const [old, own, there] = [new Set(keys(base)), keys(mine), new Set(keys(theirs))];
  const index = own.indexOf(key);
  return index < 0 ? undefined : own.slice(index + 1).find((each) => there.has(each) || !old.has(each));
}

/** The same as typed: `0.10` is not `0.1`. */
function same(one: Place | undefined, other: Place | undefined): boolean {
  if (one === undefined || other === undefined) return one === other;
  return oneLine(one.node) === oneLine(other.node);
}

function remarksLost(base: string, mine: string, merged: string): string {
  const known = new Set([...remarksIn(base), ...remarksIn(merged)]);
  return remarksIn(mine)
    .filter((each) => !known.has(each))
    .join('\n');
}

function remarksIn(text: string): readonly string[] {
  return [...lexemesOf(text)].filter(({ type }) => type === 'comment').map(({ source }) => source.trimEnd());
}
