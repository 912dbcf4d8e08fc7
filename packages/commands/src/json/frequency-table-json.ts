import {
  type Coincidence,
  exactRatio,
  type FrequencyCell,
  type FrequencyRow,
  type FrequencyTable,
  type LineMultiple,
  type OperatingState,
  showClause,
  showFraction,
} from '@soundpost/core';
import { answerJson, quantityJson } from './values-json.ts';

const frequency = (value: number) => quantityJson('frequency', value);

function spanJson(span: { readonly low: number; readonly high: number }): unknown {
  return { low: frequency(span.low), high: frequency(span.high) };
}

function stateJson(state: OperatingState): unknown {
  return { name: state.name, at: answerJson(state.at, frequency) };
}

function cellsJson(cells: readonly FrequencyCell[]): unknown {
  return Object.fromEntries(
    cells.map((cell) => [
      cell.state,
      {
        ...(answerJson(cell.frequency, frequency) as object),
        ...(cell.between === undefined ? {} : { between: spanJson(cell.between) }),
      },
    ]),
  );
}

function rowJson(row: FrequencyRow): unknown {
  const exact = exactRatio(row.line);
  return {
    line: row.line.name,
    meaning: row.line.meaning,
    element: row.line.element,
    ...(row.form === undefined ? {} : { form: row.form }),
    ...(exact === undefined ? {} : { exactRatio: { of: exact.of, ratio: showFraction(exact.ratio) } }),
    states: cellsJson(row.cells),
    range: answerJson(row.range, spanJson),
    harmonics: row.line.harmonics,
    assumed: row.line.assumed,
    sources: row.line.sources.map(showClause),
  };
}

export function frequencyTableJson(table: FrequencyTable): unknown {
  return {
    of: table.of,
    reference: table.reference,
    states: table.states.map(stateJson),
    shafts: table.shafts.map((shaft) => ({
      shaft: shaft.shaft,
      ratio: answerJson(shaft.ratio, (ratio) => ratio),
      states: cellsJson(shaft.cells),
    })),
    lines: table.rows.map(rowJson),
  };
}

function multipleJson({ line, harmonic }: LineMultiple): unknown {
  return { line: line.name, harmonic };
}

function separationJson(separation: Coincidence['nearest']): unknown {
  return {
    at: frequency(separation.at),
    ...(separation.state === undefined ? {} : { state: separation.state }),
    difference: frequency(separation.difference),
    ...(separation.resolution === undefined ? {} : { resolution: frequency(separation.resolution) }),
    ...(separation.recordLength === undefined ? {} : { recordLength: quantityJson('time', separation.recordLength) }),
  };
}

export function coincidenceJson(coincidence: Coincidence): unknown {
  return {
    a: multipleJson(coincidence.a),
    b: multipleJson(coincidence.b),
    separable: coincidence.separable,
    crossings: coincidence.crossings.map(frequency),
    close: coincidence.close.map(spanJson),
    states: coincidence.states.map(separationJson),
    nearest: separationJson(coincidence.nearest),
    spread: frequency(coincidence.spread),
    ...(coincidence.differBy === undefined ? {} : { differBy: coincidence.differBy }),
    ...(coincidence.instead === undefined ? {} : { instead: coincidence.instead }),
  };
}
