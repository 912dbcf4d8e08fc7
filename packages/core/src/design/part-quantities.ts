import { cableRuns } from '../chain/cable-runs.ts';
import { type Answer, fromAll } from '../quantity/index.ts';
import type { Design } from './design.ts';

/** How many pieces of one type the chosen chains need, and where they stand. */
export interface PartQuantity {
  readonly role: 'transducer' | 'mount' | 'in the line' | 'input channel';
  readonly name: string;
  readonly pieces: number;
  /** Pieces to be kept: a tenth of those in use, to the next whole, at least one. None of a part that is not consumed. */
  readonly spares: number | undefined;
  /** The points, each as often as it needs a piece. */
  readonly at: readonly string[];
}

/** How much of one type of cable the chosen chains need. */
export interface CableQuantity {
  readonly name: string;
  readonly lengths: number;
  /** Metres of all lengths together, without waste; unknown where one of them is. */
  readonly total: Answer<number>;
  readonly at: readonly string[];
}

/** Spares for so many pieces in use: s = max(1, ⌈n/10⌉). Common practice, no source. */
export function usualSpares(pieces: number): number {
  return Math.max(1, Math.ceil(pieces / 10));
}

/** Every part of every chosen chain, counted by its type. One input channel is needed by each point that stays online. */
export function partQuantities({ machines }: Design): readonly PartQuantity[] {
  const found = new Map<string, { role: PartQuantity['role']; name: string; at: string[] }>();
  for (const { point, appraisal } of machines.flatMap((machine) => machine.points)) {
    if (appraisal === undefined) continue;
    const { transducer, mount, inLine, input } = appraisal.prediction.chain.parts;
    const pieces: readonly (readonly [PartQuantity['role'], string])[] = [
      ['transducer', transducer.name],
      ['mount', mount.name],
      ...inLine.map((part) => ['in the line', part.name] as const),
      ['input channel', input.name],
    ];
    for (const [role, name] of pieces) {
      const before = found.get(`${role}/${name}`);
      if (before === undefined) found.set(`${role}/${name}`, { role, name, at: [point.of] });
      else before.at.push(point.of);
    }
  }
  return [...found.values()].map(({ role, name, at }) => ({
    role,
    name,
    pieces: at.length,
    spares: role === 'input channel' ? undefined : usualSpares(at.length),
    at,
  }));
}

/** Every length of cable of every chosen chain, added up by its type. */
export function cableQuantities({ machines }: Design): readonly CableQuantity[] {
  const found = new Map<string, { lengths: Answer<number>[]; at: string[] }>();
  for (const { point, appraisal } of machines.flatMap((machine) => machine.points)) {
    if (appraisal === undefined) continue;
    for (const { cable, length } of cableRuns(appraisal.prediction.chain)) {
      const of = found.get(cable.name) ?? { lengths: [], at: [] };
      of.lengths.push(length);
      of.at.push(point.of);
      found.set(cable.name, of);
    }
  }
  return [...found].map(([name, { lengths, at }]) => ({
    name,
    lengths: lengths.length,
    total: fromAll(Object.fromEntries(lengths.entries()), (known) =>
      Object.values(known).reduce((sum, each) => sum + each, 0),
    ),
    at: [...new Set(at)],
  }));
}
