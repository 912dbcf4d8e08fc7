import type { Edit } from '@soundpost/server/protocol';

/** A text of a file, and where it stands. */
export interface Mention {
  readonly path: Edit['path'];
  readonly said: string;
}

/** Every text of a part of a file, as it was typed. */
export function wordsAt(written: unknown, path: Edit['path']): readonly Mention[] {
  if (typeof written === 'string') return [{ path, said: written }];
  if (Array.isArray(written)) return written.flatMap((each, index) => wordsAt(each, [...path, index]));
  if (typeof written !== 'object' || written === null) return [];
  return Object.entries(written).flatMap(([key, each]) => wordsAt(each, [...path, key]));
}
