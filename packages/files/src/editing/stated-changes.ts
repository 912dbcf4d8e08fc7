import { isMap, isSeq, type Node } from 'yaml';
import { yamlAt } from './apply-edits.ts';
import type { Edit } from './edit.ts';
import { latelyRead } from './lately-read.ts';
import { oneLine } from './yaml-fragment.ts';
import { entriesOf, rootOf } from './yaml-source.ts';

/** A place at which two files state something else. What is not there has no text. */
export interface StatedChange {
  readonly path: Edit['path'];
  /** In one line, as typed. */
  readonly before?: string;
  readonly after?: string;
  /** Makes this change alone in the file before. */
  readonly edit: Edit;
  /** Takes this change alone back in the file after. */
  readonly undoing: Edit;
}

/**
 * Where two YAML texts state something else, place by place. Remarks, order and line breaks state nothing. Lists of one
 * length are compared element by element, others as a whole. Throws Refusal for a text that is no YAML.
 */
export function statedChanges(before: string, after: string): readonly StatedChange[] {
  const root = (text: string) => rootOf(latelyRead(text));
  const found: StatedChange[] = [];
  const look = (path: Edit['path'], was: Place | undefined, is: Place | undefined): void => {
    if (was !== undefined && is !== undefined) {
      if (oneLine(was.node) === oneLine(is.node)) return;
      const inside = keysInside(was.node, is.node);
      if (inside !== undefined) {
        for (const key of inside) look([...path, key], entry(was, key), entry(is, key));
        return;
      }
    }
    found.push({
      path,
      ...(was === undefined ? {} : { before: oneLine(was.node) }),
      ...(is === undefined ? {} : { after: oneLine(is.node) }),
      edit: { path, yaml: is === undefined ? undefined : yamlAt(after, path) },
      undoing: { path, yaml: was === undefined ? undefined : yamlAt(before, path) },
    });
  };
  look([], { node: root(before) }, { node: root(after) });
  return found;
}

interface Place {
  readonly node: Node | undefined;
}

function entry(place: Place, key: string | number): Place | undefined {
  return entriesOf(place.node).find((each) => each.key === key);
}

function keysInside(was: Node | undefined, is: Node | undefined): readonly (string | number)[] | undefined {
  const [old, now] = [was, is].map((each) => entriesOf(each).map(({ key }) => key)) as [
    (string | number)[],
    (string | number)[],
  ];
  if (isMap(was) && isMap(is)) return [...new Set([...old, ...now])];
  return isSeq(was) && isSeq(is) && old.length === now.length ? old : undefined;
}
