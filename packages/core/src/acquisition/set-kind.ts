import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { FrequencyRow, FrequencyTable } from '../machine/frequency-table.ts';
import { type Answer, unanswered } from '../quantity/index.ts';
import type { RecordNeed } from './spectrum-set.ts';

/** What is asked of a record, and what could not be asked because it is not known. */
export interface SetNeed {
  readonly need: RecordNeed;
  readonly unknown: readonly string[];
}

/** A kind of record: one file, one line in `sets.ts`. Gives nothing where the point has no use for it. */
export interface SetKind {
  readonly kind: string;
  readonly purpose: string;
  needs(point: MeasuringPoint, table: FrequencyTable): SetNeed | undefined;
}

export function setKind(definition: SetKind): SetKind {
  return definition;
}

/** Every row of that line, whichever element makes it: all `pole-pass` of a train. */
export function rowsCalled(table: FrequencyTable, line: string): readonly FrequencyRow[] {
  return table.rows.filter((row) => row.line.name.endsWith(`/${line}`));
}

export function frequencyIn(row: FrequencyRow, state: string): Answer<number> {
  return (
    row.cells.find((cell) => cell.state === state)?.frequency ??
    unanswered([{ of: row.line.name, what: `state ${state}` }])
  );
}
