import type { Movable } from '../engine/machine/building-views.ts';
import { useBuild } from './use-build.ts';

interface MoveButtonsOptions {
  readonly what: Movable;
  readonly machine: string;
  readonly name: string;
  readonly first: boolean;
  readonly last: boolean;
}

/** One place earlier or later in the train: the order of the drawing, the tables and what is printed. */
export function MoveButtons({ what, machine, name, first, last }: MoveButtonsOptions) {
  const build = useBuild();
  const move = (by: -1 | 1) => void build({ act: 'move', what, machine, name, by });
  return (
    <>
      <button type="button" disabled={first} aria-label={`${name} one place earlier`} onClick={() => move(-1)}>
        ↑
      </button>
      <button type="button" disabled={last} aria-label={`${name} one place later`} onClick={() => move(1)}>
        ↓
      </button>
    </>
  );
}
