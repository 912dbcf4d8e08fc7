import { count, made, type Reader } from './reader.ts';

/**
 * The version of a file's format. A newer one is refused plainly: this program would lose what it does not know. An
 * older one is carried forward by the migrations of its file before it is read.
 */
export function versionReader(newest: number): Reader<number> {
  return made(count('Version of the file format', { example: String(newest) }), (version, placed, refuse) =>
    version <= newest
      ? version
      : refuse(placed, {
          read: String(version),
          expected: `a version up to ${newest}, the newest this program reads`,
          suggestion: 'The file was written by a newer program: read it with that one; nothing was changed.',
        }),
  );
}
