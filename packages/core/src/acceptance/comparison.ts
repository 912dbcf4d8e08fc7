import type { Design, DesignedMachine, DesignedPoint } from '../design/design.ts';
import type { Judged } from './check/check-kind.ts';
import { checkKinds } from './check/kinds.ts';
import { type MeasuredRecord, recordName, type ServingChannel } from './measured-record.ts';
import { occasionKinds } from './occasion/kinds.ts';
import { type ReadingTable, readingKinds } from './reading/kinds.ts';

/** A check, on a record, at a point, with what it found. */
export interface CheckResult extends Judged {
  readonly check: string;
  readonly title: string;
  readonly at: string;
  readonly record: string;
}

/** A check that no record of the session can answer, with the occasions that would. */
export interface Unproven {
  readonly check: string;
  readonly title: string;
  readonly at: string;
  /** Records and tables, any of which could answer it. */
  readonly needs: readonly WayToRecord[];
}

/** An occasion or a table by its name, and how it is made. */
export interface WayToRecord {
  readonly name: string;
  readonly how: string;
}

/** Checks of one point that the same records would answer. */
export interface UnprovenTogether {
  readonly at: string;
  readonly checks: readonly string[];
  readonly needs: readonly string[];
}

/** What could not be proven, by point and by the records that would prove it, in the order it was found. */
export function unprovenTogether(unproven: readonly Unproven[]): readonly UnprovenTogether[] {
  const groups = new Map<string, UnprovenTogether>();
  for (const { at, title, needs } of unproven) {
    const names = needs.map(({ name }) => name);
    const key = `${at} | ${names.join(' | ')}`;
    const before = groups.get(key)?.checks ?? [];
    groups.set(key, { at, needs: names, checks: [...before, title] });
  }
  return [...groups.values()];
}

/** Every record that is asked for, once, with how it is made. */
export function waysToRecord(unproven: readonly Unproven[]): readonly WayToRecord[] {
  return [...new Map(unproven.flatMap(({ needs }) => needs.map((each) => [each.name, each] as const))).values()];
}

/** What the recordings say of the installed chains. */
export interface Comparison {
  readonly results: readonly CheckResult[];
  /** Records of points that the design does not have. */
  readonly strangers: readonly string[];
  /** Points of the design at which nothing was recorded or read off. */
  readonly unrecorded: readonly string[];
  /** Every check of every recorded point that could not be answered at all. */
  readonly unproven: readonly Unproven[];
  readonly points: readonly PointComparison[];
}

export interface PointComparison {
  readonly at: string;
  readonly verdict: 'meets' | 'fails' | 'cannot tell';
  readonly counts: Readonly<Record<Judged['verdict'], number>>;
}

interface Placed {
  readonly machine: DesignedMachine;
  readonly designed: DesignedPoint;
}

/** What was recorded beside the points, and read off by hand. */
export interface BesideRecords {
  readonly readings?: readonly ReadingTable[];
  readonly serving?: readonly ServingChannel[];
}

/** Holds every record and table against the point it is said to be made at, by every check that it can answer. */
export function comparison(
  design: Design,
  records: readonly MeasuredRecord[],
  { readings = [], serving = [] }: BesideRecords = {},
): Comparison {
  const places = new Map<string, Placed>(
    design.machines.flatMap((machine) => machine.points.map((designed) => [designed.point.of, { machine, designed }])),
  );
  const points = new Map([...places].map(([of, { designed }]) => [of, designed]));
  const results = [
    ...records.flatMap((record) => resultsOf(record, records, serving, places, points)),
    ...readings.flatMap((table) => resultsOfTable(table, places)),
  ];
  const named = [...new Set([...records.map((each) => each.at), ...readings.map((each) => each.point)])];
  const recorded = named.filter((at) => places.has(at));
  return {
    results,
    strangers: named.filter((at) => !places.has(at)),
    unrecorded: [...places.keys()].filter((at) => !named.includes(at)),
    unproven: recorded.flatMap((at) => unprovenAt(at, places.get(at)!.designed, results)),
    points: recorded.map((at) => pointComparison(at, results)),
  };
}

function resultsOf(
  record: MeasuredRecord,
  records: readonly MeasuredRecord[],
  serving: readonly ServingChannel[],
  places: ReadonlyMap<string, Placed>,
  points: ReadonlyMap<string, DesignedPoint>,
): readonly CheckResult[] {
  const place = places.get(record.at);
  if (place === undefined) return [];
  const others = records.filter((each) => each !== record);
  const beside = serving.filter((each) => each.recording === record.recording);
  return checkKinds
    .filter((kind) => kind.on.includes(record.occasion.kind) && kind.applies(place.designed))
    .flatMap((kind) =>
      kind.judge({ ...place, record, others, serving: beside, points }).map((judged) => ({
        ...doubted(judged, record),
        check: kind.kind,
        title: kind.title,
        at: record.at,
        record: recordName(record),
      })),
    );
}

/** A doubtful record may well show what is wrong; that all is well it does not prove. */
function doubted(judged: Judged, { doubts = [] }: MeasuredRecord): Judged {
  if (judged.verdict !== 'meets' || doubts.length === 0) return judged;
  return {
    ...judged,
    verdict: 'cannot tell',
    because: `The record itself is in doubt: ${doubts.join('; ')}.`,
    needs: ['the same record once more, without that'],
  };
}

function resultsOfTable(table: ReadingTable, places: ReadonlyMap<string, Placed>): readonly CheckResult[] {
  const place = places.get(table.point);
  if (place === undefined) return [];
  return checkKinds
    .filter((kind) => kind.tables?.of.includes(table.kind) === true && kind.applies(place.designed))
    .flatMap((kind) =>
      kind.tables!.judge({ ...place, table }).map((judged) => ({
        ...judged,
        check: kind.kind,
        title: kind.title,
        at: table.point,
        record: table.name,
      })),
    );
}

/** What no record could answer: no record of a fitting occasion, or none that could tell. */
function unprovenAt(at: string, designed: DesignedPoint, results: readonly CheckResult[]): readonly Unproven[] {
  return checkKinds
    .filter((kind) => kind.applies(designed))
    .filter(
      (kind) => !results.some((each) => each.check === kind.kind && each.at === at && each.verdict !== 'cannot tell'),
    )
    .map((kind) => ({
      check: kind.kind,
      title: kind.title,
      at,
      needs: [
        ...occasionKinds.filter((each) => kind.on.includes(each.kind)),
        ...readingKinds.filter((each) => kind.tables?.of.includes(each.kind) === true),
      ].map(({ name, how }) => ({ name, how })),
    }));
}

/** A point fails where one check fails, meets where at least one meets and none fails or is left open. */
function pointComparison(at: string, results: readonly CheckResult[]): PointComparison {
  const own = results.filter((each) => each.at === at);
  const counts = { meets: 0, fails: 0, 'cannot tell': 0 };
  for (const { verdict } of own) counts[verdict] += 1;
  const verdict =
    counts.fails > 0 ? 'fails' : counts.meets > 0 && counts['cannot tell'] === 0 ? 'meets' : 'cannot tell';
  return { at, verdict, counts };
}
