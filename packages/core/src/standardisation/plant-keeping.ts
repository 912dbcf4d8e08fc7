import type { Mount } from '../chain/mount/kinds.ts';
import type { Transducer } from '../chain/transducer/kinds.ts';
import type { Design, DesignedPoint } from '../design/design.ts';
import { pointShortlist } from '../design/point-shortlist.ts';
import { type Missing, type Money, valueIfStated } from '../quantity/index.ts';
import type { ShortlistRow } from '../selection/shortlist.ts';
import type { KeepingProblem, KeepingRule, Need, PartType, Way } from './part-type.ts';
import type { Store, StorePart, StoreShelf } from './store.ts';

/** The chain a way stands for, judged at a point like those of its need. */
export interface JudgedWay {
  readonly way: Way;
  readonly transducer: Transducer;
  readonly mount: Mount;
  readonly row: ShortlistRow;
}

/** Points that ask for the same and offer the same: their candidates are judged once. */
export interface JudgedNeed {
  readonly need: Need;
  readonly ways: readonly JudgedWay[];
  /** Candidates of which it cannot be told whether they meet; they are never chosen. */
  readonly untold: number;
  /** What stands there in the design, as a way of the same list, where it is one. */
  readonly standing: readonly (JudgedWay | undefined)[];
}

/** A plant as a question of part numbers, with what could not be asked. */
export interface PlantKeeping {
  readonly problem: KeepingProblem;
  readonly currency: string;
  readonly needs: readonly JudgedNeed[];
  /** Shelf of each type of the problem. */
  readonly shelf: readonly StoreShelf[];
  /** Candidates of the plant without a price in the store: they are not chosen, which the price may change. */
  readonly unpriced: readonly string[];
  /** What the store leaves open; what it costs is then at least what is told. */
  readonly missing: readonly Missing[];
  /** Places of the types whose spares cannot be reckoned; none are counted in their cost. */
  readonly sparesUnknown: ReadonlySet<number>;
  /** Points without a stated way to their input, or without a target: nothing can be chosen there. */
  readonly aside: readonly string[];
}

/**
 * Every transducer on every mount a point compares is judged there; those that meet every essential target are the
 * ways of its need. Cable, parts in the line and input stay as stated. `step` is told before each point.
 */
export function plantKeeping(design: Design, store: Store, step: (point: string) => void = () => {}): PlantKeeping {
  const missing: Missing[] = [];
  const head = headOf(store, missing);
  const { types, shelf, fitting, place, sparesUnknown } = typesOf(store, head, missing);
  const byKey = new Map<string, { points: DesignedPoint[]; rows: readonly ShortlistRow[] }>();
  const aside: string[] = [];
  for (const machine of design.machines) {
    for (const designed of machine.points) {
      const { point, stated } = designed;
      if (stated.way === undefined || point.targets.length === 0) {
        aside.push(point.of);
        continue;
      }
      const key = sameAsked(designed);
      const known = byKey.get(key);
      if (known !== undefined) {
        known.points.push(designed);
        continue;
      }
      step(point.of);
      byKey.set(key, { points: [designed], rows: pointShortlist(design.plant, designed) });
    }
  }
  const unpriced = new Set<string>();
  const needs = [...byKey.values()].map(({ points, rows }): JudgedNeed => {
    const ways = rows.flatMap((row): JudgedWay[] => {
      if (row.appraisal.outcome !== 'meets' && row.appraisal.outcome !== 'warns') return [];
      const transducer = place.get(`transducers/${row.transducer.name}`);
      const mount = place.get(`mounts/${row.mount.name}`);
      if (transducer === undefined) unpriced.add(row.transducer.name);
      if (mount === undefined) unpriced.add(row.mount.name);
      if (transducer === undefined || mount === undefined) return [];
      const way: Way = {
        name: `${row.transducer.name} on ${row.mount.name}`,
        parts: [transducer, mount].sort((a, b) => a - b),
        beside: fitting[transducer]! + fitting[mount]!,
      };
      return [{ way, transducer: row.transducer, mount: row.mount, row }];
    });
    const { of } = points[0]!.point;
    return {
      need: { name: of, points: points.map((each) => each.point.of), ways: ways.map((each) => each.way) },
      ways,
      untold: rows.filter((row) => row.appraisal.outcome === 'cannot tell').length,
      standing: points.map(({ stated: { chosen } }) =>
        ways.find((each) => each.transducer.name === chosen?.transducer.name && each.mount.name === chosen.mount.name),
      ),
    };
  });
  const limit = valueIfStated(store.head.values.mostTransducers);
  return {
    problem: {
      types,
      requirements: needs.map(({ need }) => need),
      serviceLevel: head.serviceLevel,
      ...(limit === undefined
        ? {}
        : { atMost: { types: types.flatMap((_, k) => (shelf[k] === 'transducers' ? [k] : [])), count: limit } }),
    },
    currency: head.currency,
    needs,
    shelf,
    unpriced: [...unpriced].sort(),
    missing,
    sparesUnknown,
    aside,
  };
}

interface Head {
  readonly keeping: number;
  readonly serviceLevel: number;
  readonly currency: string;
}

const secondsPerYear = 31_557_600;

function headOf({ head: { values, of } }: Store, missing: Missing[]): Head {
  const perYear = valueIfStated(values.keepingPerYear);
  const horizon = valueIfStated(values.horizon);
  const serviceLevel = valueIfStated(values.serviceLevel);
  if (perYear === undefined) missing.push({ of, what: 'what keeping one more part number costs a year' });
  if (horizon === undefined) missing.push({ of, what: 'over how long it is reckoned' });
  if (serviceLevel === undefined) missing.push({ of, what: 'service level' });
  return {
    keeping: ((perYear?.amount ?? 0) * (horizon ?? 0)) / secondsPerYear,
    // Without a service level no spares are reckoned, which `missing` says.
    serviceLevel: serviceLevel ?? 0,
    currency: perYear?.currency ?? '',
  };
}

function typesOf(store: Store, head: Head, missing: Missing[]) {
  const types: PartType[] = [];
  const shelf: StoreShelf[] = [];
  const fitting: number[] = [];
  const place = new Map<string, number>();
  const sparesUnknown = new Set<number>();
  for (const each of Object.keys(store.parts) as StoreShelf[]) {
    for (const part of store.parts[each]) {
      const { name, values } = part;
      const price = valueIfStated(values.price);
      // It is then told with the others that have none, where it would meet a point.
      if (price === undefined) continue;
      const failures = failuresOf(part, missing);
      if (failures === undefined || head.serviceLevel === 0) sparesUnknown.add(types.length);
      place.set(`${each}/${name}`, types.length);
      shelf.push(each);
      fitting.push(valueIfStated<Money>(values.fitting)?.amount ?? 0);
      types.push({
        name,
        price: price.amount,
        keeping: head.keeping,
        failuresPerLeadTime: failures ?? 0,
        inStock: valueIfStated<number>(values.inStock) ?? 0,
        rule: valueIfStated<KeepingRule>(values.rule) ?? 'free',
      });
    }
  }
  return { types, shelf, fitting, place, sparesUnknown };
}

/** Lead time over time between failures; not known, and said so, where either is not. */
function failuresOf({ name, values }: StorePart, missing: Missing[]): number | undefined {
  const leadTime = valueIfStated(values.leadTime);
  const between = valueIfStated(values.betweenFailures);
  if (leadTime === undefined) missing.push({ of: name, what: 'lead time, by which its spares are reckoned' });
  if (between === undefined)
    missing.push({ of: name, what: 'time between failures, by which its spares are reckoned' });
  return leadTime === undefined || between === undefined ? undefined : leadTime / between;
}

/** Equal for points whose candidates are judged alike: all but the names of the point and its machine. */
function sameAsked({ point, stated }: DesignedPoint): string {
  const { of: _, name: __, machine: ___, location: ____, direction: _____, ...asked } = point;
  const nameless = JSON.stringify([asked, stated.way, stated.compared], (key, value) => {
    if (key === 'of' || key === 'written' || key === 'origin' || key === 'from') return undefined;
    return typeof value === 'bigint' ? `${value}n` : value instanceof Map ? [...value] : value;
  });
  return nameless;
}
