import { type DesignedMachine, type FrequencyCell, type FrequencyRow, showNumber, showQuantity } from '@soundpost/core';
import { answered } from '../typesetting/answers.ts';
import { type Html, html, named, type Piece } from '../typesetting/html.ts';
import { type Setting, unknown } from '../typesetting/setting.ts';
import { type Column, table } from '../typesetting/table.ts';

/** Digits that tell a frequency to better than a tenth of a part in a thousand. */
const digits = 5;

/** The shafts with their exact ratios, then every line with its form, its exact factor and its frequencies. */
export function frequencySection({ frequencies }: DesignedMachine, setting: Setting): Html {
  const states = frequencies.states.map((state) => state.name);
  const shafts = table({
    caption: html`Shafts, counted in turns of ${named(frequencies.reference)}; a minus turns the other way`,
    columns: [
      { head: 'Shaft', cell: (row) => named(row.shaft) },
      {
        head: 'Exact ratio',
        kind: 'line',
        cell: (row) => answered(row.ratio, (ratio) => ratio.replace('-', '\u2212')),
      },
      ...states.map(
        (state): Column<(typeof frequencies.shafts)[number]> => ({
          head: html`${named(state)}, r/min`,
          kind: 'number',
          cell: (row) =>
            speed(
              row.cells.find((cell) => cell.state === state),
              setting,
            ),
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
      { head: 'Form', cell: (row) => row.form ?? unknown(row.line.form.known ? [] : row.line.form.missing) },
      ...states.map(
        (state): Column<FrequencyRow> => ({
          head: named(state),
          kind: 'number',
          cell: (row) =>
            hertz(
              row.cells.find((cell) => cell.state === state),
              setting,
            ),
        }),
      ),
      { head: 'Range with slip', kind: 'line', cell: (row) => rangeOf(row, setting) },
    ],
    rows: frequencies.rows,
  });
  return html`${shafts}${lines}`;
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
