/** One stated change made alone in the old design, and the keys of what that moved. */
export interface MadeAlone {
  readonly moves: ReadonlySet<string>;
}

/** Why something derived changed: which stated changes move it, and whether one of them alone is enough. */
export interface Cause {
  /** Places in the list of the stated changes. */
  readonly changes: readonly number[];
  /** `alone`: each of them moves it by itself. `together`: it stays where it was unless all of them are made. */
  readonly acting: 'alone' | 'together' | 'not told apart';
}

/**
 * Leads each derived change back to the stated changes behind it. `made`: each stated change alone made in the old
 * design. `undone`: each alone taken back in the new one; it tells of what only moves when several are made together.
 * What neither tells is said to be so; nothing is guessed.
 */
export function ledBack(
  keys: readonly string[],
  made: readonly MadeAlone[],
  undone: readonly MadeAlone[],
): ReadonlyMap<string, Cause> {
  const among = (list: readonly MadeAlone[], key: string) =>
    list.flatMap((each, place) => (each.moves.has(key) ? [place] : []));
  return new Map(
    keys.map((key): readonly [string, Cause] => {
      const alone = among(made, key);
      if (alone.length > 0) return [key, { changes: alone, acting: 'alone' }];
      const together = among(undone, key);
      if (together.length > 0) return [key, { changes: together, acting: 'together' }];
      return [key, { changes: [], acting: 'not told apart' }];
    }),
  );
}
