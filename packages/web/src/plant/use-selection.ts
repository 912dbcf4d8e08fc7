import { useMemo, useRef, useState } from 'react';
import type { Line } from './lines.ts';

export interface Selection {
  readonly has: (of: string) => boolean;
  readonly points: ReadonlySet<string>;
  /** Whether every point under a line is selected, or some are. */
  readonly of: (line: Line) => 'all' | 'some' | 'none';
  readonly toggle: (line: Line) => void;
  /** All points from where the selection began to this line. */
  readonly reach: (line: Line, from: Line | undefined) => void;
  readonly all: () => void;
  readonly clear: () => void;
}

/** Which points are selected; lines that a filter hides drop out, so that nothing unseen is changed. */
export function useSelection(lines: readonly Line[]): Selection {
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const anchor = useRef<string | undefined>(undefined);
  const points = useMemo(() => {
    const shown = new Set(lines.flatMap((line) => (line.kind === 'point' ? [line.key] : [])));
    return new Set([...chosen].filter((of) => shown.has(of)));
  }, [lines, chosen]);
  const under = (line: Line) => (line.kind === 'machine' ? line.points : [line.key]);
  const of = (line: Line) => {
    const own = under(line);
    const count = own.filter((each) => points.has(each)).length;
    return count === 0 ? 'none' : count === own.length ? 'all' : 'some';
  };
  return {
    has: (each) => points.has(each),
    points,
    of,
    toggle: (line) => {
      anchor.current = line.key;
      const next = new Set(points);
      const add = of(line) !== 'all';
      for (const each of under(line)) {
        if (add) next.add(each);
        else next.delete(each);
      }
      setChosen(next);
    },
    reach: (line, from) => {
      anchor.current ??= from?.key ?? line.key;
      const ends = [anchor.current, line.key].map((key) => lines.findIndex((each) => each.key === key));
      const [low, high] = [Math.max(0, Math.min(...ends)), Math.max(...ends)];
      setChosen(new Set(lines.slice(low, high + 1).flatMap((each) => (each.kind === 'point' ? [each.key] : []))));
    },
    all: () => setChosen(new Set(lines.flatMap((line) => (line.kind === 'point' ? [line.key] : [])))),
    clear: () => {
      anchor.current = undefined;
      setChosen(new Set());
    },
  };
}
