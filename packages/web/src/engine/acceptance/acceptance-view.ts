import {
  type Acceptance,
  type CheckResult,
  type Identified,
  type Said,
  type Showing,
  showMeasure,
  showNumber,
  showQuantity,
  unprovenTogether,
  waysToRecord,
} from '@soundpost/core';
import { findingView } from '../finding-view.ts';
import type { AcceptanceView, CheckView } from './acceptance-views.ts';

const order = ['fails', 'cannot tell', 'meets'] as const;

/** An acceptance as the page shows it. */
export function acceptanceView(accepted: Acceptance, showing: Showing, page: string, records: string): AcceptanceView {
  const { compared } = accepted;
  const checks = (at: string) =>
    compared.results
      .filter((each) => each.at === at)
      .sort((a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict))
      .map((each) => checkView(each, showing));
  return {
    recordings: accepted.recordings.map(({ name, file, bytes, sha256, form, refused }) => ({
      name,
      words: refused ?? `${file}, ${form ?? ''}, ${bytes} bytes, SHA-256 ${sha256.slice(0, 16)}…`,
      refused: refused !== undefined,
    })),
    points: compared.points.map(({ at, verdict, counts }) => ({
      at,
      verdict,
      counts: `${counts.meets} met, ${counts.fails} failed, ${counts['cannot tell']} cannot be told from these records`,
      checks: checks(at),
    })),
    strangers: compared.strangers,
    findings: accepted.findings.map((each, index) => findingView(each, index, showing, new Set())),
    questions: accepted.questions.map(({ of, what }) => `${of}: ${what}`),
    unproven: unprovenTogether(compared.unproven).map((each) => ({
      at: each.at,
      checks: each.checks.join(', '),
      needs: each.needs.length === 0 ? 'no record can' : each.needs.join(' or '),
    })),
    ways: waysToRecord(compared.unproven),
    identified: accepted.identified.map((each) => identifiedView(each, showing)),
    handedBack: accepted.handedBack.points.map(({ at, outcome, margin, changes }) => ({
      at,
      before: outcome.before,
      after: outcome.after,
      margins: `${decibels(margin.before, showing)} before, ${decibels(margin.after, showing)} after`,
      turned: changes
        .filter((each) => each.turned)
        .map(
          (each) =>
            `${each.target ?? each.rule}: ${each.before?.outcome ?? '—'} before, ${each.after?.outcome ?? '—'} after`,
        ),
    })),
    page,
    records,
  };
}

function checkView(result: CheckResult, showing: Showing): CheckView {
  const show = (each: Said) => showMeasure(each, showing);
  const { title, of, record, verdict, expected, tolerance, found, interval, because, causes, needs } = result;
  return {
    title: of === undefined ? title : `${title}, ${of}`,
    record,
    verdict,
    expected: show(expected),
    tolerance: show(tolerance),
    found: interval === undefined ? show(found) : `${show(found)} (95 %: ${show(interval)})`,
    because: show(because),
    causes: causes.map((each) => ({ cause: show(each.cause), evidence: show(each.evidence), next: show(each.next) })),
    needs: needs.map(show),
  };
}

function identifiedView(each: Identified, showing: Showing) {
  const { at, title, of, quantity, value, interval, predicted, standing } = each;
  const shown = (number: number) => showQuantity(quantity, number, showing);
  return {
    at,
    title: of === undefined ? title : `${title}, ${of}`,
    found: shown(value),
    interval: `${shown(interval.low)} to ${shown(interval.high)}`,
    designed: shown(predicted),
    standing,
  };
}

function decibels(value: number, showing: Showing): string {
  return Number.isFinite(value) ? `${showNumber(value, 3, showing.decimal)} dB` : '—';
}
