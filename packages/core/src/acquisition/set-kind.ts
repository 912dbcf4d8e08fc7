import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Target } from '../demand/target.ts';
import type { FrequencyRow, FrequencyTable } from '../machine/frequency-table.ts';
import { type Answer, unanswered } from '../quantity/index.ts';
import type { RecordNeed, SpectrumSet } from './spectrum-set.ts';

/** What is asked of a record, or the set itself where it follows the shaft; and what could not be asked for want of it. */
export type SetNeed = { readonly unknown: readonly string[] } & (
  | { readonly need: RecordNeed }
  | { readonly set: SpectrumSet }
);

/** How the shaft turns that a point looks at. */
export interface Running {
  /** The shaft; the one all speeds are counted in where nothing is said. */
  readonly shaft?: string;
  /** From standstill to the highest speed, in seconds. */
  readonly runUp?: Answer<number>;
  /** How far the speed strays within a record, from least to most, relative. */
  readonly wander?: Answer<number>;
}

/** A kind of record: one file, one line in `sets.ts`. Gives nothing where the point has no use for it. */
export interface SetKind {
  readonly kind: string;
  readonly purpose: string;
  needs(point: MeasuringPoint, table: FrequencyTable, running: Running): SetNeed | undefined;
}

export function setKind(definition: SetKind): SetKind {
  return definition;
}

/** The part of a table a point is there to listen to: what it names, or all of it. */
export function heard(table: FrequencyTable, point: { readonly hears?: readonly string[] }): FrequencyTable {
  const { hears } = point;
  return hears === undefined
    ? table
    : { ...table, rows: table.rows.filter(({ line }) => hears.includes(line.element)) };
}

/** Every row of that line, whichever element makes it: all `pole-pass` of a train. */
export function rowsCalled(table: FrequencyTable, line: string): readonly FrequencyRow[] {
  return table.rows.filter((row) => row.line.name.endsWith(`/${line}`));
}

/** Lines that are looked for in the motion of the shaft in its bearing, or in that of the housing. */
export function linesOf(point: MeasuringPoint, whose: 'shaft' | 'housing'): readonly Target[] {
  return point.targets.filter(
    ({ observable, reference }) =>
      observable.kind === 'line' && (reference === 'shaft-relative') === (whose === 'shaft'),
  );
}

/** Speed of a shaft at a state, in hertz. */
export function shaftSpeedIn(table: FrequencyTable, { shaft }: Running, state: string): Answer<number> {
  const name = shaft ?? table.reference;
  const row = table.shafts.find((each) => each.shaft === name);
  return (
    row?.cells.find((cell) => cell.state === state)?.frequency ??
    unanswered([{ of: `${table.of}/${name}`, what: `speed at ${state}` }])
  );
}

/** The frequency of a row in a state; that of a machine at rest is no frequency a record could be set for. */
export function frequencyIn(row: FrequencyRow, state: string): Answer<number> {
  const found = row.cells.find((cell) => cell.state === state)?.frequency;
  if (found === undefined) return unanswered([{ of: row.line.name, what: `state ${state}` }]);
  if (!found.known || found.value > 0) return found;
  return unanswered([{ of: row.line.name, what: `frequency above zero at ${state}` }]);
}
