import type { FrequencyTable } from '../machine/frequency-table.ts';
import { lineNamed } from '../machine/line-abbreviations.ts';
import {
  type Band,
  type Level,
  type Motion,
  notStated,
  type Quantity,
  type Span,
  stated,
  type Tolerance,
} from '../quantity/index.ts';
import { rollingBearingKinematics, tradePractice } from '../source/index.ts';
import { clause } from '../source/source.ts';
import { type FrequencyReference, showReference } from './frequency-reference.ts';
import { burst } from './observables/burst.ts';
import { line } from './observables/line.ts';
import { overall } from './observables/overall.ts';
import type { PointStatement, TargetStatement } from './statement.ts';
import { type UsualLine, usualLines } from './usual-lines.ts';
import type { Boundaries } from './zones/zone-table.ts';

const practice = clause(tradePractice, 'what is usually looked for');
const kinematics = clause(rollingBearingKinematics);

/** Bursts of a rolling bearing ring the structure here on most machines. Common practice, no source. */
const usualBurstBand: Band = { low: 2000, high: 10_000 };
const usualSeverityBand: Band = { low: 10, high: 1000 };
const slowSeverityBand: Band = { low: 2, high: 1000 };
/** Below this shaft speed the band of severity begins at 2 Hz, second-hand. */
const slowBelow = 600 / 60;
const usualTolerance: Tolerance = { low: -0.1, high: 0.1 };
const burstTolerance: Tolerance = { low: 10 ** (-3 / 20) - 1, high: 10 ** (3 / 20) - 1 };

/** Who can say how small and how large a level must be seen: no table does. */
const ask = { known: false, ask: 'reliability: how early, and how bad before it is stopped' } as const;

/**
 * Targets that the elements of a machine suggest and the point does not have yet. Levels are proposed only where the
 * owner's limits give them; otherwise they stay unknown, since a target without an amplitude lets every chain pass.
 */
export function proposals(
  table: FrequencyTable,
  point: PointStatement,
  limits: Boundaries | undefined,
): readonly TargetStatement[] {
  const lines = usualLines.flatMap((usual) =>
    table.rows
      .filter((row) => row.line.name.endsWith(`/${usual.line}`) && row.line.form.known)
      .map((row) => proposedLine(usual, row.line.name)),
  );
  const bearings = table.rows.filter((row) => row.line.name.endsWith('/inner-ring'));
  const all = [
    ...(limits === undefined ? [] : [proposedOverall(table, limits)]),
    ...lines,
    ...bearings.slice(0, 1).map(() => proposedBursts()),
  ];
  return all.filter((proposal) => !covered(proposal, point, table));
}

function covered(proposal: TargetStatement, point: PointStatement, table: FrequencyTable): boolean {
  return point.targets.some((target) => {
    if (target.observe.kind !== proposal.observe.kind) return false;
    if (proposal.frequency === undefined) return true;
    const line = lineOf(target);
    if (line === undefined) return false;
    // Letters of the trade name the same line as its whole name.
    const row = lineNamed(table, line);
    return row.known && row.value.line.name === lineOf(proposal);
  });
}

function lineOf(target: TargetStatement): string | undefined {
  const reference = target.frequency?.known === true ? target.frequency.value : undefined;
  return reference?.is === 'line' ? reference.line : undefined;
}

function assumed<T>(value: T, written: string) {
  return stated(value, written, 'assumed', 'proposal');
}

function proposedLine(usual: UsualLine, name: string): TargetStatement {
  const reference: FrequencyReference = { is: 'line', harmonic: usual.harmonic, line: name, state: usual.state };
  return {
    name: `${usual.harmonic === 1 ? '' : `${usual.harmonic} × `}${name}`,
    cause: usual.cause,
    observe: line,
    reference: 'casing',
    frequency: assumed(reference, showReference(reference)),
    smallest: ask,
    largest: ask,
    tolerance: assumed(usualTolerance, '±10 %'),
    resolution: notStated,
    weight: usual.weight,
    origin: { by: 'proposed', from: name, sources: [usual.source] },
  };
}

function proposedBursts(): TargetStatement {
  return {
    name: 'bearing bursts',
    cause: 'first spall of a rolling bearing',
    observe: burst,
    reference: 'casing',
    band: assumed(spanOf(usualBurstBand), '2..10 kHz'),
    smallest: ask,
    largest: ask,
    tolerance: assumed(burstTolerance, '±3 dB'),
    weight: 'essential',
    origin: { by: 'proposed', from: 'rolling bearings', sources: [kinematics] },
  };
}

/** An overall value must show a tenth of A/B to have a trend, and survive twice C/D to have a trip. */
function proposedOverall(table: FrequencyTable, limits: Boundaries): TargetStatement {
  const once = table.shafts.find((row) => row.shaft === table.reference)?.cells ?? [];
  const lowest = once.find((cell) => cell.state === 'lowest')?.frequency;
  const slow = lowest?.known === true && lowest.value < slowBelow;
  const band = limits.ab.band ?? (slow ? slowSeverityBand : usualSeverityBand);
  const { quantity, detector } = limits.ab;
  const level = (value: number): Level<Motion> => ({ quantity: quantity as Motion, value, detector });
  return {
    name: 'overall value',
    cause: 'severity against the limits of the machine',
    observe: overall,
    reference: 'casing',
    band: assumed(spanOf(band), `${band.low}..${band.high} Hz`),
    components: (['lowest', 'highest'] as const).map((state) => {
      const reference: FrequencyReference = { is: 'line', harmonic: 1, line: `${table.reference}/1x`, state };
      return assumed(reference, showReference(reference));
    }),
    smallest: assumed(level(limits.ab.value / 10), 'a tenth of A/B'),
    largest: assumed(level(limits.cd.value * 2), 'twice C/D'),
    tolerance: assumed(usualTolerance, '±10 %'),
    weight: 'essential',
    origin: { by: 'proposed', from: 'limits of the machine', sources: [practice] },
  };
}

function spanOf(band: Band): Span<'frequency'> {
  return { low: band.low as Quantity<'frequency'>, high: band.high as Quantity<'frequency'> };
}
