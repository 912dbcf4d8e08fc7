import { notLike } from '../demand/zones/zone-of.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { bareNumber, measuredLevel, type Said, said } from '../finding/measure.ts';
import {
  type Answer,
  answer,
  fromAll,
  type Level,
  level,
  type Stated,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import type { AlarmPolicy } from './policies/policy.ts';

/** A level, or what may stand in its place where it is stated elsewhere or not known. */
export type MaybeLevel = Level | Stated<Level> | Answer<Level>;

export interface SetPointBasis {
  /** The measuring point: `P-301/pump/drive-end/horizontal`. */
  readonly at: string;
  /** The level of this machine, healthy, at this point, at a known speed and load. */
  readonly baseline: MaybeLevel;
  /** The boundaries B/C and C/D; all of them at once where they have to be computed first. */
  readonly boundaries: Limits | Answer<Limits>;
  readonly policy: AlarmPolicy;
}

export interface Limits {
  readonly bc: MaybeLevel;
  readonly cd: MaybeLevel;
}

export const setPointNames = ['alert', 'alertCap', 'trip', 'tripCap'] as const;
export type SetPointName = (typeof setPointNames)[number];

/** The set points, why each is what it is, and what is doubtful or to be asked about them. */
export interface SetPoints extends Readonly<Record<SetPointName, Answer<Level>>> {
  readonly reasons: Readonly<Record<SetPointName, Said>>;
  readonly findings: readonly Finding[];
}

/** Alert = min(baseline + margin·B/C, cap·B/C), in the unit of the baseline. The cap holds whatever the baseline is. */
export function alertLevel(baseline: number, bc: number, policy: AlarmPolicy): number {
  return Math.min(baseline + policy.alertMargin * bc, policy.alertCap * bc);
}

/** Trip = min(trip·C/D, cap·C/D), in the unit of C/D. */
export function tripLevel(cd: number, policy: AlarmPolicy): number {
  return Math.min(policy.trip, policy.tripCap) * cd;
}

/**
 * Set points from baseline and zone boundaries. Trip and both caps need the boundaries only; the alert needs the
 * baseline of this very machine. Without it the alert is unknown and a question is asked: a zero or the baseline of a
 * sister machine would make a number that looks sound. A baseline of another quantity, detector or band is no baseline.
 */
export function setPoints({ at, baseline, boundaries, policy }: SetPointBasis): SetPoints {
  const limits: Answer<Limits> = 'known' in boundaries ? boundaries : answer(boundaries);
  const bc = thenAnswer(limits, (each) => asAnswer(each.bc, at, 'boundary B/C'));
  const cd = thenAnswer(limits, (each) => asAnswer(each.cd, at, 'boundary C/D'));
  const own = asAnswer(baseline, at, 'baseline');
  const usable = alike(own, bc);
  const times = (share: number) => (from: { readonly limit: Level }) => like(from.limit, share * from.limit.value);
  return {
    alert: fromAll({ usable, bc }, (known) => like(known.bc, alertLevel(known.usable.value, known.bc.value, policy))),
    alertCap: fromAll({ limit: bc }, times(policy.alertCap)),
    trip: fromAll({ limit: cd }, ({ limit }) => like(limit, tripLevel(limit.value, policy))),
    tripCap: fromAll({ limit: cd }, times(policy.tripCap)),
    reasons: reasonsOf(own, bc, cd, policy),
    findings: own.known
      ? bc.known
        ? baselineFindings(at, own.value, bc.value, policy)
        : []
      : [noBaseline(at, policy)],
  };
}

function asAnswer(given: MaybeLevel, of: string, what: string): Answer<Level> {
  if (!('known' in given)) return answer(given);
  if (given.known) return answer(given.value);
  return 'missing' in given ? given : unanswered([{ of, what }]);
}

function like(each: Level, value: number): Level {
  return level(each.quantity, value, each.detector, each.band);
}

/** The baseline where it is a level of the kind of the boundary. One without a band is taken, and a finding warns of it. */
function alike(own: Answer<Level>, bc: Answer<Level>): Answer<Level> {
  if (!own.known || !bc.known) return own;
  const asked = unlike(own.value, bc.value);
  return asked === undefined ? own : unanswered([{ of: 'baseline', what: asked }]);
}

function unlike(own: Level, limit: Level): string | undefined {
  const banded = own.band === undefined && limit.band !== undefined ? { ...own, band: limit.band } : own;
  return notLike(banded, limit);
}

function reasonsOf(
  own: Answer<Level>,
  bc: Answer<Level>,
  cd: Answer<Level>,
  policy: AlarmPolicy,
): SetPoints['reasons'] {
  const { alertMargin, alertCap, trip, tripCap } = policy;
  const times = (share: number, name: string, limit: Answer<Level>) =>
    said`${share === 1 ? '' : said`${bareNumber(share, 3)} times `}${name} (${limit.known ? measuredLevel(limit.value) : 'not known'})`;
  const capped =
    own.known && bc.known && own.value.value + alertMargin * bc.value.value > alertCap * bc.value.value
      ? said`, held at its cap of ${times(alertCap, 'B/C', bc)}`
      : '';
  const base = own.known ? measuredLevel(own.value) : 'not known';
  return {
    alert: said`baseline (${base}) + ${times(alertMargin, 'B/C', bc)}${capped}`,
    alertCap: times(alertCap, 'B/C', bc),
    trip: times(Math.min(trip, tripCap), 'C/D', cd),
    tripCap: times(tripCap, 'C/D', cd),
  };
}

function baselineFindings(at: string, b: Level, bc: Level, policy: AlarmPolicy): readonly Finding[] {
  const { sources } = policy;
  const asked = unlike(b, bc);
  if (asked !== undefined) {
    return [
      finding({
        rule: 'alarm/baseline-unlike',
        weight: 'blocks-issue',
        at,
        found: measuredLevel(b),
        limit: measuredLevel(bc),
        because: 'Baseline and boundary are unlike; their sum would be a number without meaning.',
        remedy: [`state the baseline as ${asked}`],
        sources,
      }),
    ];
  }
  const found: Finding[] = [];
  const about = { at, found: measuredLevel(b), sources } as const;
  if (b.band === undefined && bc.band !== undefined) {
    found.push(
      finding({
        ...about,
        rule: 'alarm/baseline-without-band',
        weight: 'warns',
        limit: measuredLevel(bc),
        because: 'The baseline states no band; it is taken as one of the band of the boundaries.',
        remedy: ['state the band in which the baseline was measured'],
      }),
    );
  }
  if (b.value === 0) {
    found.push(
      finding({
        ...about,
        rule: 'alarm/baseline-zero',
        weight: 'question',
        limit: 'a level above zero',
        because:
          'A machine that runs vibrates: a zero is an empty cell or a dead channel, and the alert would be too low.',
        remedy: ['measure the baseline', 'state it as unknown'],
        asks: 'Was the baseline measured on the running machine?',
      }),
    );
  }
  const alert = alertLevel(b.value, bc.value, policy);
  if (b.value >= alert) {
    found.push(
      finding({
        ...about,
        rule: 'alarm/baseline-above-alert',
        weight: 'blocks-issue',
        limit: measuredLevel(like(bc, alert)),
        because: 'The alert would stand from the first day; nobody heeds an alarm that always stands.',
        remedy: ['find out why the machine vibrates so before set points are issued'],
      }),
    );
  } else if (b.value > bc.value) {
    found.push(
      finding({
        ...about,
        rule: 'alarm/baseline-in-zone-c',
        weight: 'warns',
        limit: measuredLevel(bc),
        because: 'A baseline above B/C is that of a machine not fit for long operation, not of a healthy one.',
        remedy: ['judge the machine before its level is made the baseline'],
      }),
    );
  }
  return found;
}

function noBaseline(at: string, policy: AlarmPolicy): Finding {
  return finding({
    rule: 'alarm/no-baseline',
    weight: 'question',
    at,
    found: 'no baseline',
    limit: 'the level of this machine, healthy, at a known speed and load',
    because: 'The alert is a step above what this machine does when it is well; no other number can stand for it.',
    remedy: ['measure it after a time of operation', 'agree on a starting value from like machines, marked as assumed'],
    sources: [...policy.sources, clause(tradePractice, 'start from like machines or agreed values', 'from memory')],
    asks: 'What does this point read when the machine is well? Its route data or first commissioned run says.',
  });
}
