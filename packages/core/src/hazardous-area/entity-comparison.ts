import type { Group } from '../demand/hazardous-area.ts';
import type { QuantityName } from '../quantity/index.ts';
import { iec60079x14 } from '../source/iec-60079-14.ts';
import { iec60079x25 } from '../source/iec-60079-25.ts';
import { type Clause, clause } from '../source/source.ts';
import { atMost } from './at-most.ts';

/** What a barrier lets out, and what may hang on it: Uo, Io, Po, Co, Lo, Lo/Ro. */
export interface EntitySource {
  readonly voltage: number;
  readonly current: number;
  readonly power: number;
  readonly capacitance: number;
  readonly inductance: number;
  readonly inductanceOverResistance?: number | undefined;
}

/** What stands in the field, all parts of the loop together: least Ui, Ii, Pi; sums of Ci and Li. */
export interface EntityApparatus {
  readonly voltage: number;
  readonly current: number;
  readonly power: number;
  readonly capacitance: number;
  readonly inductance: number;
}

/** The cable in the field as it counts here: all its lengths together, and the greatest of its values per length. */
export interface EntityCable {
  readonly length: number;
  readonly capacitance: number;
  readonly inductance: number;
  readonly capacitancePerLength: number;
  readonly inductancePerLength: number;
  /** Of the pair there and back; absent where nothing is known of it. */
  readonly inductanceOverResistance?: number | undefined;
  readonly known: 'declared' | 'default of the standard';
}

/** One length of cable: farads, henries and ohms per metre of the pair, there and back. */
export interface CableRun {
  readonly length: number;
  readonly capacitancePerLength: number;
  readonly inductancePerLength: number;
  readonly inductanceOverResistance?: number | undefined;
}

/** Lengths of cable one behind the other. A ratio counts only where every length has one. */
export function cableOfRuns(runs: readonly CableRun[], known: EntityCable['known']): EntityCable {
  const sum = (of: (run: CableRun) => number) => runs.reduce((total, run) => total + of(run), 0);
  const ratios = runs.map((run) => run.inductanceOverResistance);
  return {
    length: sum((run) => run.length),
    capacitance: sum((run) => run.capacitancePerLength * run.length),
    inductance: sum((run) => run.inductancePerLength * run.length),
    capacitancePerLength: Math.max(0, ...runs.map((run) => run.capacitancePerLength)),
    inductancePerLength: Math.max(0, ...runs.map((run) => run.inductancePerLength)),
    inductanceOverResistance: ratios.every((each) => each !== undefined) ? Math.max(0, ...ratios) : undefined,
    known,
  };
}

/** One line of the comparison, as it is signed: what was found, what is allowed. */
export interface EntityClause {
  readonly name: 'Uo ≤ Ui' | 'Io ≤ Ii' | 'Po ≤ Pi' | 'Ci + Cc ≤ Co' | 'Li + Lc ≤ Lo' | 'Lc/Rc ≤ Lo/Ro';
  readonly quantity: QuantityName;
  readonly found: number;
  readonly limit: number;
  readonly passed: boolean;
}

export const limitations = ['voltage', 'current', 'power', 'capacitance', 'inductance'] as const;
export type Limitation = (typeof limitations)[number];

export interface EntityComparison {
  readonly group: Group;
  readonly passed: boolean;
  readonly clauses: readonly EntityClause[];
  /** Whether Co and Lo were halved, because both lumped values exceed 1 %. */
  readonly halved: boolean;
  readonly allowedCapacitance: number;
  readonly allowedInductance: number;
  readonly totalCapacitance: number;
  readonly totalInductance: number;
  readonly cable: EntityCable;
  /** Longest cable of this kind that still passes, in metres, unrounded; zero where none does. */
  readonly maximumLength: number;
  readonly limitedBy: Limitation;
}

/** Cable values where none are declared. IEC 60079-25, second-hand. */
export const defaultCable = {
  capacitancePerLength: 200e-12,
  inductancePerLength: 1e-6,
  inductanceOverResistance: 30e-6,
} as const;

/** Largest Co after halving: 600 nF in IIC, 1 µF in every other group. */
export function capAfterHalving(group: Group): number {
  return group === 'IIC' ? 600e-9 : 1e-6;
}

/**
 * The comparison of one source with what hangs on it: Uo ≤ Ui, Io ≤ Ii, Po ≤ Pi, Ci + Cc ≤ Co, and Li + Lc ≤ Lo or
 * Lc/Rc ≤ Lo/Ro; equality passes. Where Ci > 1 % of Co and Li > 1 % of Lo, both of the lumped parts alone, Co and Lo
 * count half, Co then at most 600 nF or 1 µF. Lo/Ro is used only while Li ≤ 1 % of Lo: beyond, the standard wants
 * another ratio, which the certificate does not give. Holds for one source and linear limits. Source: IEC 60079-14
 * (the comparison second-hand, the rest from memory).
 */
export function entityComparison(
  group: Group,
  source: EntitySource,
  apparatus: EntityApparatus,
  cable: EntityCable,
): EntityComparison {
  const [Ci, Li] = [apparatus.capacitance, apparatus.inductance];
  const lumpedL = !atMost(Li, 0.01 * source.inductance);
  const halved = lumpedL && !atMost(Ci, 0.01 * source.capacitance);
  const Co = halved ? Math.min(source.capacitance / 2, capAfterHalving(group)) : source.capacitance;
  const Lo = halved ? source.inductance / 2 : source.inductance;
  const [C, L] = [Ci + cable.capacitance, Li + cable.inductance];
  const clauses: EntityClause[] = [
    line('Uo ≤ Ui', 'voltage', source.voltage, apparatus.voltage),
    line('Io ≤ Ii', 'current', source.current, apparatus.current),
    line('Po ≤ Pi', 'power', source.power, apparatus.power),
    line('Ci + Cc ≤ Co', 'capacitance', C, Co),
  ];
  const byInductance = line('Li + Lc ≤ Lo', 'inductance', L, Lo);
  const byRatio = lumpedL ? undefined : ratioLine(source.inductanceOverResistance, cable.inductanceOverResistance);
  clauses.push(!byInductance.passed && byRatio?.passed === true ? byRatio : byInductance);
  const longest = longestCable(Co - Ci, byRatio?.passed === true ? Number.POSITIVE_INFINITY : Lo - Li, cable);
  const beyondLength = clauses.slice(0, 3).find((each) => !each.passed);
  return {
    group,
    passed: clauses.every((each) => each.passed),
    clauses,
    halved,
    allowedCapacitance: Co,
    allowedInductance: Lo,
    totalCapacitance: C,
    totalInductance: L,
    cable,
    maximumLength: beyondLength === undefined ? longest.length : 0,
    limitedBy: beyondLength === undefined ? longest.limitedBy : (beyondLength.quantity as Limitation),
  };
}

function line(name: EntityClause['name'], quantity: QuantityName, found: number, limit: number): EntityClause {
  return { name, quantity, found, limit, passed: atMost(found, limit) };
}

function ratioLine(allowed: number | undefined, found: number | undefined): EntityClause | undefined {
  if (allowed === undefined || found === undefined) return undefined;
  return line('Lc/Rc ≤ Lo/Ro', 'inductance per resistance', found, allowed);
}

/** As long as its values per length allow, lengths of lesser values in it counted as they are. */
function longestCable(
  capacitanceLeft: number,
  inductanceLeft: number,
  cable: EntityCable,
): { readonly length: number; readonly limitedBy: Limitation } {
  const { length, capacitancePerLength: c, inductancePerLength: l } = cable;
  const byCapacitance = lengthWithin(capacitanceLeft + (c * length - cable.capacitance), c);
  const byInductance = lengthWithin(inductanceLeft + (l * length - cable.inductance), l);
  return byCapacitance <= byInductance
    ? { length: byCapacitance, limitedBy: 'capacitance' }
    : { length: byInductance, limitedBy: 'inductance' };
}

/** Longer than any plant: a cable that stores nothing has no longest length, and a number is shown all the same. */
const endless = 1e6;

function lengthWithin(left: number, perLength: number): number {
  if (left < 0) return 0;
  return perLength > 0 ? Math.min(endless, left / perLength) : endless;
}

export const entitySources: readonly Clause[] = [
  clause(iec60079x14, 'entity comparison', 'second-hand'),
  clause(iec60079x14, 'values above 1 %'),
  clause(iec60079x25, 'cable parameters'),
];
