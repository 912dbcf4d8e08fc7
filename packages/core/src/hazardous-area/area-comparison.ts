import { type CertificateColumn, certificateColumns } from '../chain/certificate.ts';
import type { MeasuringChain } from '../chain/chain.ts';
import type { Group, hazardousAreaSheet } from '../demand/hazardous-area.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import {
  type Answer,
  answer,
  ask,
  fromAll,
  type Missing,
  type Sheet,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';
import type { Clause } from '../source/source.ts';
import { caution } from './caution.ts';
import {
  type CableRun,
  cableOfRuns,
  defaultCable,
  type EntityApparatus,
  type EntityCable,
  type EntityComparison,
  type EntitySource,
  entityComparison,
  entitySources,
} from './entity-comparison.ts';
import { columnFor, groupSources } from './group.ts';
import { type LoopInArea, loopInArea } from './loop-in-area.ts';
import type { Marking } from './marking.ts';
import { lowestRank, type ProtectionLevel, type Rank, rankOf } from './protection-level.ts';
import { temperatureClassSources } from './temperature-class.ts';
import { requiredLevel, zoneName, zoneSource } from './zone.ts';

/** A special condition of use, to be carried to whoever installs. */
export interface CarriedCondition {
  readonly of: string;
  readonly number: Answer<string>;
  readonly words: string;
}

/** One loop in one classified area: what the drawing asks, what the certificates say, and the comparison of both. */
export interface AreaComparison {
  readonly of: string;
  readonly area: Sheet<typeof hazardousAreaSheet>;
  /** `Zone 1 IIC T3`, what is not stated as `unknown`. */
  readonly name: string;
  readonly required: Answer<ProtectionLevel>;
  readonly loop: LoopInArea;
  /** Lowest level of protection among the parts of the loop. */
  readonly lowest: Answer<Rank>;
  /** Column of the barrier's certificate that was used. */
  readonly column: Answer<CertificateColumn>;
  /** By the declared cable values, or by those of the standard where none are declared. */
  readonly entity: Answer<EntityComparison>;
  /** The same by the cable values of the standard, whatever is declared. */
  readonly byDefault: Answer<EntityComparison>;
  /** Where the declaration of the cable stands. */
  readonly declaredBy: string | undefined;
  readonly conditions: readonly CarriedCondition[];
  readonly caution: string;
  readonly sources: readonly Clause[];
}

/** Compares the loop of a point with the area the point lies in; nothing where it lies in none. */
export function areaComparison(point: MeasuringPoint, chain: MeasuringChain): AreaComparison | undefined {
  const { area } = point;
  if (area === undefined) return undefined;
  const loop = loopInArea(chain);
  const group = ask(area, ['group'], (stated) => stated.group);
  const column = thenAnswer(group, (known) => usableColumn(known, loop));
  const declared = declaredCable(loop);
  const byDefault = defaultCableOf(loop);
  const compared = (cable: Answer<EntityCable>) =>
    fromAll({ group, source: sourceOf(loop, column), apparatus: apparatusOf(loop), cable }, (v) =>
      entityComparison(v.group, v.source, v.apparatus, v.cable),
    );
  return {
    of: point.of,
    area,
    name: areaName(area),
    required: ask(area, ['zone'], (stated) => requiredLevel(stated.zone)),
    loop,
    lowest: lowestOf(loop),
    column,
    entity: compared(declared ?? byDefault),
    byDefault: compared(byDefault),
    declaredBy:
      declared === undefined ? undefined : loop.cables.flatMap((each) => each.declared?.from ?? []).join(', '),
    conditions: conditionsOf(loop),
    caution,
    sources: [zoneSource, ...groupSources, ...temperatureClassSources, ...entitySources],
  };
}

/** `Zone 1 IIC T3`. */
export function areaName({ values }: Sheet<typeof hazardousAreaSheet>): string {
  const zone = values.zone.known ? zoneName(values.zone.value) : 'unknown zone';
  const group = values.group.known ? values.group.value : 'unknown group';
  const heat = values.temperatureClass?.known ? ` ${values.temperatureClass.value}` : '';
  return `${zone} ${group}${heat}`;
}

/** The column of the group; where the certificate has only those of more easily ignited gases, the nearest of them. */
function usableColumn(group: Group, { barrier }: LoopInArea): Answer<CertificateColumn> {
  const own = columnFor(group);
  if (barrier === undefined) return answer(own);
  const stricter = certificateColumns.slice(certificateColumns.indexOf(own));
  const stated = stricter.find((each) => {
    const { capacitance, inductance } = barrier.certificate.columns[each];
    return capacitance.known && inductance.known;
  });
  return answer(stated ?? own);
}

function sourceOf({ barrier }: LoopInArea, column: Answer<CertificateColumn>): Answer<EntitySource> {
  if (barrier === undefined) return unanswered([{ of: 'the loop', what: 'barrier or isolator with a certificate' }]);
  const { voltage, current, power, columns } = barrier.certificate;
  return thenAnswer(column, (name) => {
    const { capacitance, inductance, inductanceOverResistance } = columns[name];
    return fromAll({ voltage, current, power, capacitance, inductance }, (known) => ({
      ...known,
      inductanceOverResistance,
    }));
  });
}

/** Least Ui, Ii, Pi and the sums of Ci and Li; what is simple by declaration bears what the others bear. */
function apparatusOf({ apparatus, uncertified, strangers }: LoopInArea): Answer<EntityApparatus> {
  const missing: readonly Missing[] = [uncertified, ...strangers.map((each) => each.of)].flatMap((of) =>
    of === undefined ? [] : [{ of, what: 'certificate, or declaration as simple apparatus' }],
  );
  if (missing.length > 0) return unanswered(missing);
  const certificates = apparatus.map((each) => each.certificate);
  const bearing = certificates.filter((each) => !each.simple);
  const least = (of: 'voltage' | 'current' | 'power') =>
    folded(
      bearing.map((each) => each[of]),
      Number.MAX_VALUE,
      Math.min,
    );
  const stored = (of: 'capacitance' | 'inductance') =>
    folded(
      certificates.map((each) => (each.simple && !each[of].known ? answer(0) : each[of])),
      0,
      (one, other) => one + other,
    );
  return fromAll(
    {
      voltage: least('voltage'),
      current: least('current'),
      power: least('power'),
      capacitance: stored('capacitance'),
      inductance: stored('inductance'),
    },
    (known) => known,
  );
}

function folded(
  answers: readonly Answer<number>[],
  start: number,
  fold: (one: number, other: number) => number,
): Answer<number> {
  return answers.reduce<Answer<number>>((so, each) => fromAll({ so, each }, (v) => fold(v.so, v.each)), answer(start));
}

/** The cable as declared; nothing where a length of it is not declared at all. */
function declaredCable({ cables }: LoopInArea): Answer<EntityCable> | undefined {
  if (cables.some((each) => each.declared === undefined)) return undefined;
  return runsAs(
    cables.map(({ length, declared }) => {
      const { capacitancePerLength, inductancePerLength, resistancePerLength } = declared!;
      return fromAll(
        { length, capacitancePerLength, inductancePerLength },
        (known): CableRun => ({
          ...known,
          inductanceOverResistance:
            resistancePerLength.known && resistancePerLength.value > 0
              ? known.inductancePerLength / resistancePerLength.value
              : undefined,
        }),
      );
    }),
    'declared',
  );
}

function defaultCableOf({ cables }: LoopInArea): Answer<EntityCable> {
  const runs = cables.map(({ length }) => fromAll({ length }, (known): CableRun => ({ ...known, ...defaultCable })));
  return runsAs(runs, 'default of the standard');
}

function runsAs(runs: readonly Answer<CableRun>[], known: EntityCable['known']): Answer<EntityCable> {
  const all = fromAll(Object.fromEntries(runs.map((run, index) => [index, run])), (values) => Object.values(values));
  return fromAll({ all }, (v) => cableOfRuns(v.all, known));
}

/** A loop is worth its weakest part; simple apparatus takes the level of what it hangs on. */
function lowestOf({ apparatus, uncertified, barrier }: LoopInArea): Answer<Rank> {
  if (uncertified !== undefined) return unanswered([{ of: uncertified, what: 'certificate' }]);
  const counted = [
    ...apparatus.filter((each) => !each.certificate.simple).map((each) => each.markings),
    ...(barrier === undefined ? [] : [barrier.markings]),
  ];
  const all = fromAll(Object.fromEntries(counted.map((each, index) => [index, each])), (values) =>
    Object.values(values),
  );
  return thenAnswer(all, (known) => {
    const rank = lowestRank(known.map(bestOf));
    return rank === undefined ? unanswered([{ of: 'the loop', what: 'level of protection' }]) : answer(rank);
  });
}

/** A part with several markings is worth its best one; which one fits the area is judged beside this. */
function bestOf(markings: readonly Marking[]): Rank {
  return markings.map((each) => rankOf(each.level)).sort()[0]!;
}

function conditionsOf({ apparatus, barrier }: LoopInArea): readonly CarriedCondition[] {
  const certificates = [
    ...apparatus.map((each) => each.certificate),
    ...(barrier === undefined ? [] : [barrier.certificate]),
  ];
  return certificates.flatMap(({ of, number, conditions }) =>
    conditions === undefined ? [] : [{ of, number, words: conditions }],
  );
}
