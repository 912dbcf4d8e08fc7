import { pointAddress } from '../app/address.ts';
import type { PlantView, PointRow } from '../engine/views.ts';

/** What the walk looks at to see that something was really done. */
export interface Seen {
  readonly place: string;
  readonly row: PointRow | undefined;
  /** The mount of the point when the walk began. */
  readonly mount: string;
}

export type StepName = 'open' | 'swap' | 'undo' | 'ask';

interface WalkStep {
  readonly name: StepName;
  readonly title: string;
  done(seen: Seen): boolean;
}

export const walkSteps: readonly WalkStep[] = [
  {
    name: 'open',
    title: 'Open the point',
    done: ({ place, row }) => row !== undefined && place === pointAddress(row.of),
  },
  {
    name: 'swap',
    title: 'Change its mount',
    done: ({ row, mount }) => row !== undefined && row.mount !== '' && row.mount !== mount,
  },
  { name: 'undo', title: 'Undo it', done: ({ row, mount }) => row?.mount === mount },
  { name: 'ask', title: 'See what to ask', done: ({ place }) => place.split('?')[0] === '/findings' },
];

/** How many steps from one on are done by now; a step is looked at only when those before it are done. */
export function stepAfter(step: number, seen: Seen): number {
  return step < walkSteps.length && walkSteps[step]!.done(seen) ? step + 1 : step;
}

const demoPoint = 'pump-drive-end-horizontal';

/** The point the walk is made at: that of the demo, otherwise the first one on a stud, otherwise the first with a chain. */
export function walkPoint({ points }: Pick<PlantView, 'points'>): PointRow | undefined {
  const measured = points.filter((each) => each.transducer !== '' && each.mount !== '');
  return (
    measured.find((each) => each.name === demoPoint) ?? measured.find((each) => each.mount === 'stud') ?? measured[0]
  );
}
