import type { Answer, AsSeen, DefectStatement, RehearsedMotion, RehearsedRecord } from '@soundpost/core';
import type { DetectionRow } from '../rehearse/detection.ts';
import { answerJson, levelJson, quantityJson } from './values-json.ts';

/** One chain with what came through it. */
export interface RehearsedChain {
  readonly name: string;
  readonly defects: readonly DefectStatement[];
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
  detection: readonly DetectionRow[] | undefined,
): unknown {
  return {
    point: of,
    motion: answerJson(motion, (each) => ({
      script: each.script,
      speed: each.speed,
      contents: each.contents.map((content) => ({ ...content, level: levelJson(content.level) })),
    })),
    chains: chains.map(({ name, defects, record, seen, standing }) => ({
      chain: name,
      defects,
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
      overall: answerJson(seen, (each) =>
        answerJson(each.overall, ({ rms, peak, crest, kurtosis }) => ({
          rms,
          peak,
          crest: answerJson(crest, (value) => value),
          kurtosis: answerJson(kurtosis, (value) => value),
        })),
      ),
      envelope: answerJson(seen, (each) =>
        answerJson(each.envelope, ({ band, because, motion, method, lines }) => ({
          band,
          because,
          motion,
          method,
          lines,
        })),
      ),
    })),
    ...(detection === undefined
      ? {}
      : {
          detection: detection.map(({ size, chains: each }) => ({
            size: size === undefined ? 'healthy' : levelJson(size),
            chains: each.map(({ name, seen }) => ({ chain: name, ...seen })),
          })),
        }),
    written,
  };
}
