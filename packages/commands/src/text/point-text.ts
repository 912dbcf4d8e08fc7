import {
  type MeasuringPoint,
  type Showing,
  showLevel,
  showNumber,
  showQuantity,
  showReference,
  showTolerance,
  type Target,
  type TargetStatement,
  valueIfStated,
} from '@soundpost/core';
import { heading, type Line, labelled, paragraph, plainLines } from '../layout/line.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { answerText, bandText, cellText } from './values-text.ts';

export function pointHeading(point: MeasuringPoint, { width }: Manner): readonly Line[] {
  return heading(point.of, width);
}

/** Where the point is, and what stands there. */
export function placeLines(point: MeasuringPoint, { showing, width }: Manner): readonly Line[] {
  const surface = valueIfStated(point.surfaceTemperature);
  const direction = answerText(point.direction, (words) => words);
  return [
    ...labelled('Place', `${point.location}; ${direction}; ${point.installation}`, width),
    ...labelled(
      'Surface',
      surface === undefined ? 'temperature unknown' : showQuantity('temperature', surface, showing),
      width,
    ),
  ];
}

/** Where in frequency a target lies: its band and what it is judged at, or its line. */
export function whereText(target: Target, showing: Showing): string {
  const band = cellText(target.band, (each) => bandText(each, showing));
  if (target.observable.atRest) return 'at rest';
  if (target.observable.kind === 'line' || target.observable.scansBand) return band;
  const at = cellText(target.frequencies, (each) => each.map((f) => showNumber(f, 4, showing.decimal)).join(', '));
  return `${band}, judged at ${at} Hz`;
}

/** What must be captured: how small, how large, how truly. */
export function targetTable(point: MeasuringPoint, manner: Manner): readonly Line[] {
  const { showing, width } = manner;
  const columns: Column[] = [
    { head: 'target' },
    { head: 'where' },
    { head: 'must see' },
    { head: 'must survive' },
    { head: 'truly' },
  ];
  const rows = point.targets.map((target) => [
    target.name,
    whereText(target, showing),
    cellText(target.smallest, (level) => showLevel(level, showing)),
    cellText(target.largest, (level) => showLevel(level, showing)),
    cellText(target.tolerance, (tolerance) => showTolerance(tolerance, showing)),
  ]);
  if (point.targets.length === 0) return paragraph('  No target is stated: nothing can be proven here.', width, '  ');
  return plainLines(table(columns, rows, width, '  '));
}

/** The same with why, and on whose word. */
export function targetLines(point: MeasuringPoint, manner: Manner): readonly Line[] {
  const { showing, width } = manner;
  return [
    ...targetTable(point, manner),
    ...point.targets.flatMap((target) => paragraph(`  - ${originText(target, showing)}`, width, '  ')),
    ...point.disturbances.flatMap((each) => {
      const band = each.band === undefined ? '' : ` in ${bandText(each.band, showing)}`;
      const level = answerText(each.level, (known) => showLevel(known, showing));
      return paragraph(`  - to be survived, not measured: ${each.name}, ${level}${band}`, width, '  ');
    }),
  ];
}

function originText(target: Target, showing: Showing): string {
  const { origin } = target;
  const lines =
    target.observable.kind === 'line'
      ? `, lines of ${cellText(target.resolution, (f) => showQuantity('frequency', f, showing))}`
      : '';
  const within = target.within === undefined ? '' : `; its motion is part of '${target.within}'`;
  const reference = target.reference === 'casing' ? '' : `, ${target.reference} motion`;
  return (
    `${target.name} (${target.weight}${reference}; ${target.observable.meaning}${lines}): ${target.cause}${within}. ` +
    `${origin.by === 'stated' ? 'Stated in' : 'Proposed from'}: ${origin.from}.`
  );
}

/** What the machine suggests and the point does not ask for yet; its levels are for people to say. */
export function proposalLines(proposals: readonly TargetStatement[], { showing, width }: Manner): readonly Line[] {
  if (proposals.length === 0) return [];
  return [
    ...paragraph(`  Suggested by the machine, not asked for here (none is taken up by itself):`, width, '  '),
    ...proposals.flatMap((each) => paragraph(`  - ${proposalText(each, showing)}`, width, '  ')),
  ];
}

function proposalText(proposal: TargetStatement, showing: Showing): string {
  const reference = valueIfStated(proposal.frequency);
  const band = valueIfStated(proposal.band);
  const name =
    reference === undefined
      ? `${proposal.name}${band === undefined ? '' : `, ${bandText(band, showing)}`}`
      : showReference(reference);
  const smallest = proposal.smallest.known ? `, from ${showLevel(proposal.smallest.value, showing)}` : '';
  return `${name}${smallest}: ${proposal.cause} (${proposal.weight})`;
}
