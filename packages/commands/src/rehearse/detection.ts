import {
  type DesignedMachine,
  type FaultStatement,
  type Level,
  level,
  type Motion,
  Refusal,
  type Share,
  shareOf,
} from '@soundpost/core';
import type { RehearsedChain } from '../json/rehearsal-json.ts';
import { type ChainAsked, type RehearsalAsked, rehearsing } from './rehearsal.ts';

/** How often a chain sees a fault of a size, of so many draws of noise and slip. */
export interface DetectionRow {
  /** Nothing for the healthy machine: what is seen there is a false alarm. */
  readonly size: Level<Motion> | undefined;
  readonly chains: readonly { readonly name: string; readonly seen: Share }[];
}

/** Parts of the stated size that are tried, and none of it. */
const shares = [0, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1];

/** The first fault at part of its size, so many draws each: whether the target, or the line of the envelope, is seen. */
export function* detecting(
  machine: DesignedMachine,
  asked: RehearsalAsked,
  chains: readonly ChainAsked[],
  detection: number,
  what: string,
  draws: number,
): Generator<string, readonly DetectionRow[]> {
  const [fault, ...others] = asked.faults;
  if (fault === undefined) {
    throw new Refusal({
      read: `--detection ${what} without a fault`,
      expected: "'--fault' with the largest size tried",
    });
  }
  const rows: DetectionRow[] = [];
  for (const share of shares) {
    const size = level(fault.size.quantity, fault.size.value * share, fault.size.detector);
    const faults: readonly FaultStatement[] = share === 0 ? others : [{ ...fault, size }, ...others];
    const seen = chains.map(() => 0);
    const names = chains.map(() => '');
    for (let draw = 0; draw < draws; draw++) {
      yield `draw ${draw + 1} of ${draws} at ${share === 0 ? 'no fault' : `${share} of its size`}`;
      const run = rehearsing(
        machine,
        chains[0]!.point,
        { ...asked, faults, seed: asked.seed + draw },
        chains,
        detection,
      );
      let made = run.next();
      while (made.done !== true) made = run.next();
      for (const [index, chain] of made.value.chains.entries()) {
        names[index] = chain.name;
        if (seenIn(chain, what)) seen[index]! += 1;
      }
    }
    rows.push({
      size: share === 0 ? undefined : size,
      chains: seen.map((count, index) => ({ name: names[index]!, seen: shareOf(count, draws) })),
    });
  }
  return rows;
}

function seenIn({ seen }: RehearsedChain, what: string): boolean {
  if (!seen.known) return false;
  const { targets, envelope } = seen.value;
  const target = targets.find((each) => each.target === what);
  const lines = envelope.known ? envelope.value.lines : [];
  const line = lines.find((each) => each.name === what);
  if (target === undefined && line === undefined) {
    const names = [...targets.map((each) => each.target), ...lines.map((each) => each.name)];
    throw new Refusal({ read: `--detection ${what}`, expected: `one of ${names.join(', ')}` });
  }
  return line?.seen === true || (target?.seen.known === true && target.seen.value.seen);
}
