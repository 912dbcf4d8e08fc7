import {
  type Appraisal,
  type Cell,
  cells,
  type Judgement,
  leastMargin,
  measureJson,
  reason,
  type ShortlistRow,
  showMeasure,
} from '@soundpost/core';
import { decibelsJson, missingJson, quantityJson } from './values-json.ts';

export function judgementJson(judgement: Judgement): unknown {
  return {
    rule: judgement.rule,
    ...(judgement.target === undefined ? {} : { target: judgement.target }),
    outcome: judgement.outcome,
    what: showMeasure(judgement.what),
    found: measureJson(judgement.found),
    limit: measureJson(judgement.limit),
    ...(judgement.frequency === undefined ? {} : { frequency: quantityJson('frequency', judgement.frequency) }),
    ...(judgement.margin === undefined ? {} : { margin: decibelsJson(judgement.margin) }),
    ...(judgement.needs === undefined || judgement.outcome === 'meets' ? {} : { needs: showMeasure(judgement.needs) }),
    ...(judgement.missing === undefined ? {} : (missingJson(judgement.missing) as object)),
    shown: reason(judgement),
  };
}

function cellJson(cell: Cell): unknown {
  return {
    target: cell.target,
    outcome: cell.outcome,
    ...(cell.decides === undefined ? {} : { decides: judgementJson(cell.decides) }),
  };
}

export function appraisalJson(appraisal: Appraisal): unknown {
  const { parts } = appraisal.prediction.chain;
  return {
    chain: {
      shown: appraisal.prediction.chain.of,
      transducer: parts.transducer.name,
      mount: parts.mount.name,
      cable: parts.cable.name,
      inLine: parts.inLine.map((each) => each.name),
      input: parts.input.name,
      assumptions: appraisal.prediction.chain.transducer.assumptions,
    },
    outcome: appraisal.outcome,
    leastMargin: decibelsJson(leastMargin(appraisal)),
    ...(appraisal.nearest === undefined ? {} : { nearest: judgementJson(appraisal.nearest) }),
    targets: cells(appraisal).map(cellJson),
    judgements: appraisal.judgements.map(judgementJson),
  };
}

export function shortlistRowJson(row: ShortlistRow): unknown {
  return {
    ...(appraisalJson(row.appraisal) as object),
    failures: row.failures,
    ...(row.costRank === undefined ? {} : { costRank: row.costRank }),
  };
}
