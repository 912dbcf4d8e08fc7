import {
  type JudgedArea,
  type MeasuringChain,
  measureJson,
  type PointProbes,
  showClause,
  showMeasure,
  terminalVoltages,
} from '@soundpost/core';
import { judgementJson } from './judgement-json.ts';
import { answerJson, quantityJson } from './values-json.ts';

/** The comparison of a loop with its area: never without its wording and its caution. */
export function areaJson(area: JudgedArea): unknown {
  return {
    area: area.name,
    wording: area.wording,
    judgements: area.judgements.map(judgementJson),
    column: answerJson(area.column, (column) => column),
    ...(area.declaredBy === undefined ? {} : { declaredBy: area.declaredBy }),
    entity: answerJson(area.entity, (entity) => entity),
    conditions: area.conditions.map((each) => ({
      of: each.of,
      words: each.words,
      number: answerJson(each.number, (number) => number),
    })),
    caution: area.caution,
    sources: area.sources.map(showClause),
  };
}

/** What each arrangement of probes reads, and why. */
export function probesJson(probes: PointProbes): unknown {
  return probes.arrangements.map(({ title, rows }) => ({
    arrangement: title,
    rows: rows.map((row) => ({
      name: row.name,
      value: answerJson(row.value, measureJson),
      because: showMeasure(row.because),
    })),
  }));
}

/** Direct voltage expected at every terminal. */
export function terminalsJson(chain: MeasuringChain): unknown {
  return terminalVoltages(chain).map((each) => ({
    terminal: each.terminal,
    state: each.state,
    voltage: answerJson(each.voltage, (span) => ({
      low: quantityJson('voltage', span.low),
      high: quantityJson('voltage', span.high),
    })),
  }));
}
