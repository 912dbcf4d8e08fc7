import type { FrequencyReference } from '../demand/frequency-reference.ts';
import type { TargetStatement } from '../demand/statement.ts';
import { type Reference, sees } from '../demand/target.ts';
import type { DesignedPoint } from '../design/design.ts';
import type { FrequencyTable } from '../machine/frequency-table.ts';
import { lineNamed } from '../machine/line-abbreviations.ts';
import { asSineDetector, type Level, level, type Motion, valueIfStated } from '../quantity/index.ts';
import type { CourseTerm } from './course.ts';
import type { MotionPart } from './part/part.ts';

/** Whose motion a point measures: what its transducer senses, otherwise what its targets ask for. */
export function measuredReference({ appraisal, point }: DesignedPoint): Reference {
  const sensed = appraisal?.prediction.chain.transducer.reference;
  return sensed ?? point.targets.find((target) => target.reference !== 'any')?.reference ?? 'casing';
}

/**
 * What a healthy machine shows at a point: each line of its targets, and each burst as noise in its band, at a share of
 * the smallest level that must be seen. A line that several targets name is there once, at its largest level.
 */
export function healthyParts(designed: DesignedPoint, table: FrequencyTable, share: number): readonly MotionPart[] {
  if (!(share > 0)) return [];
  const reference = measuredReference(designed);
  const parts = designed.stated.statement.targets
    .filter((target) => sees(reference, target.reference) && !target.observe.atRest)
    .flatMap((target) => partsOf(target, table, share));
  const largest = new Map<string, MotionPart>();
  for (const part of parts) {
    const before = largest.get(part.name);
    if (before === undefined || asRms(before.level) < asRms(part.level)) largest.set(part.name, part);
  }
  return [...largest.values()];
}

function asRms(of: Level<Motion>): number {
  return asSineDetector(of, 'rms').value;
}

function partsOf(target: TargetStatement, table: FrequencyTable, share: number): readonly MotionPart[] {
  const smallest = valueIfStated(target.smallest);
  if (smallest === undefined) return [];
  const healthy = level(smallest.quantity, smallest.value * share, smallest.detector);
  if (target.observe.scansBand) {
    const band = valueIfStated(target.band);
    if (band === undefined) return [];
    return [{ is: 'noise', name: `${target.name}, healthy`, level: healthy, band: { low: band.low, high: band.high } }];
  }
  const stated = target.frequency === undefined ? (target.components ?? []) : [target.frequency];
  const references = stated.flatMap((each) => valueIfStated(each) ?? []);
  // The components of an overall value share it as squares.
  const part = healthy.value / Math.sqrt(new Set(references.map(nameOf)).size || 1);
  return references.flatMap((each): readonly MotionPart[] => {
    const of = termsOf(each, table);
    return of === undefined
      ? []
      : [{ is: 'tone', name: nameOf(each), of, level: level(healthy.quantity, part, healthy.detector) }];
  });
}

function nameOf(reference: FrequencyReference): string {
  if (reference.is === 'number') return `${reference.value} Hz`;
  return reference.harmonic === 1 ? reference.line : `${reference.harmonic} × ${reference.line}`;
}

export function termsOf(reference: FrequencyReference, table: FrequencyTable): readonly CourseTerm[] | undefined {
  if (reference.is === 'number') return [{ hertz: reference.value }];
  const row = lineNamed(table, reference.line);
  return row.known ? [{ line: row.value.line, times: reference.harmonic }] : undefined;
}
