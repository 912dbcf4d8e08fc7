import type { Answer, AsSeen, RehearsedMotion, RehearsedRecord } from '@soundpost/core';
import { answerJson, levelJson, quantityJson } from './values-json.ts';

/** One chain with what came through it. */
export interface RehearsedChain {
  readonly name: string;
  readonly record: Answer<RehearsedRecord>;
  readonly seen: Answer<AsSeen>;
  /** Whether nothing turned while it was recorded: no target is looked for in it. */
  readonly standing: boolean;
}

/** What was put in, and for each chain what is seen of it. Shares are plain numbers from 0 to 1. */
export function rehearsalJson(
  of: string,
  motion: Answer<RehearsedMotion>,
  chains: readonly RehearsedChain[],
  written: readonly string[],
): unknown {
  return {
    point: of,
    motion: answerJson(motion, (each) => ({
      script: each.script,
      speed: each.speed,
      contents: each.contents.map((content) => ({ ...content, level: levelJson(content.level) })),
    })),
    chains: chains.map(({ name, record, seen, standing }) => ({
      chain: name,
      record: answerJson(record, (each) => ({
        rate: quantityJson('frequency', each.rate),
        samples: each.volts.length,
        clipped: each.clippedShare,
        slewed: each.slewedShare,
        overRange: each.overRangeShare,
        beyondLimit: each.beyondLimitShare,
        direct: answerJson(each.direct, (volts) => quantityJson('voltage', volts)),
        notes: each.notes,
      })),
      targets: answerJson(seen, (each) =>
        (standing ? [] : each.targets).map(({ target, seen: found }) => ({
          target,
          found: answerJson(found, (one) => ({ ...one, found: levelJson(one.found), against: levelJson(one.against) })),
        })),
      ),
    })),
    written,
  };
}
