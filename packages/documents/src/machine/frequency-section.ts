import {
  type DesignedMachine,
  type FrequencyCell,
  type FrequencyRow,
  type OperatingState,
  showNumber,
  showQuantity,
} from '@soundpost/core';
import { opened } from '../derivation/opened.ts';
import { answered } from '../typesetting/answers.ts';
import { type Html, html, named, type Piece } from '../typesetting/html.ts';
import { type Setting, unknown } from '../typesetting/setting.ts';
import { type Column, table } from '../typesetting/table.ts';
import { explainedForm, explainedLine, explainedRange, explainedRatio, explainedSpeed } from './explained-frequency.ts';

/** Digits that tell a frequency to better than a tenth of a part in a thousand. */
const digits = 5;

/** The shafts with their exact ratios, then every line with its form, its exact factor and its frequencies. */
export function frequencySection(machine: DesignedMachine, setting: Setting): Html {
  const { frequencies } = machine;
  const { states } = frequencies;
  const { showing } = setting;
  const shafts = table({
    caption: html`Shafts, counted in turns of ${named(frequencies.reference)}; a minus turns the other way`,
    columns: [
      { head: 'Shaft', cell: (row) => named(row.shaft) },
      {
        head: 'Exact ratio',
        kind: 'line',
        cell: (row) => answered(row.ratio, (ratio) => ratio.replace('-', '\u2212')),
        opened: (row, set) => opened(set, explainedRatio(row, frequencies.reference, showing), setting),
      },
      ...states.map(
        (state): Column<(typeof frequencies.shafts)[number]> => ({
          head: html`${named(state.name)}, r/min`,
          kind: 'number',
          cell: (row) => speed(cellAt(row.cells, state), setting),
          opened: (row, set) => {
            const found = cellAt(row.cells, state)?.frequency;
            return found?.known === true
              ? opened(set, explainedSpeed(machine, row, state, found.value, showing), setting)
              : set;
          },
        }),
      ),
    ],
    rows: frequencies.shafts,
  });
  const lines = table({
    caption: 'Lines, in hertz: whole numbers and fractions in a form are exact; the range is over all speeds',
    columns: [
      { head: 'Line', cell: (row: FrequencyRow) => named(row.line.name) },
      { head: 'What it is', cell: (row) => row.line.meaning },
      {
        head: 'Form',
        cell: (row) => row.form ?? unknown(row.line.form.known ? [] : row.line.form.missing),
        opened: (row, set) => opened(set, explainedForm(machine, row, showing), setting),
      },
      ...states.map(
        (state): Column<FrequencyRow> => ({
          head: named(state.name),
          kind: 'number',
          cell: (row) => hertz(cellAt(row.cells, state), setting),
          opened: (row, set) => {
            const found = cellAt(row.cells, state)?.frequency;
            return found?.known === true
              ? opened(set, explainedLine(machine, row.line, state, found.value, showing), setting)
              : set;
          },
        }),
      ),
      {
        head: 'Range with slip',
        kind: 'line',
        cell: (row) => rangeOf(row, setting),
        opened: (row, set) =>
          row.range.known
            ? opened(set, explainedRange(row.line, row.range.value, 'over all speeds', showing), setting)
            : set,
      },
    ],
    rows: frequencies.rows,
  });
  return html`${shafts}${lines}`;
}

function cellAt(cells: readonly FrequencyCell[], { name }: OperatingState): FrequencyCell | undefined {
  return cells.find((cell) => cell.state === name);
}

function speed(cell: FrequencyCell | undefined, { showing }: Setting): Piece {
  return answered(cell?.frequency, (value) =>
    showQuantity('shaft speed', value, { ...showing, digits }).replace(/ r\/min$/, ''),
  );
}

function hertz(cell: FrequencyCell | undefined, { showing }: Setting): Piece {
  return answered(cell?.frequency, (value) => showNumber(value, digits, showing.decimal));
}

function rangeOf({ range }: FrequencyRow, { showing }: Setting): Piece {
  return answered(range, ({ low, high }) =>
    low === high
      ? showNumber(low, digits, showing.decimal)
      : `${showNumber(low, digits, showing.decimal)} to ${showNumber(high, digits, showing.decimal)}`,
  );
}
