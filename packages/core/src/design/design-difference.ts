import { type Judgement, type Outcome, outcomes } from '../chain/rules/rule.ts';
import { type Said, said } from '../finding/measure.ts';
import { cells, chainCell } from '../selection/appraisal.ts';
import { type DerivedSort, type DerivedValue, derivedValues } from './derived-values.ts';
import type { Design, DesignedPoint } from './design.ts';

/** Something a design says otherwise than another, or that only one of them says. */
export interface DerivedChange {
  /** The same in every design for the same thing at the same place. */
  readonly key: string;
  readonly sort: DerivedSort;
  readonly at: string;
  readonly name: string;
  readonly before?: Said;
  readonly after?: Said;
}

/** How far something asked for was proven; `no chain` where nothing is there that could be judged. */
export type Proof = Outcome | 'no chain';

/** A target, or the chain as a whole, whose proof came to stand otherwise. */
export interface ProofChange {
  readonly at: string;
  readonly target: string;
  readonly before: Proof;
  readonly after: Proof;
  /** What decides it now. */
  readonly decides?: Judgement;
}

/** A point whose commissioning tests no longer say anything of what stands there. */
export interface TestsToRepeat {
  readonly at: string;
  /** `new` where the point was not there, or had no chain, before. */
  readonly because: readonly ('new' | 'chain' | 'limits' | 'alarm' | 'scaling' | 'settings')[];
}

export interface DesignDifference {
  readonly changes: readonly DerivedChange[];
  /** Was proven, perhaps with a warning, and is so no longer. */
  readonly unproven: readonly ProofChange[];
  /** Was not proven, and is so now. */
  readonly proven: readonly ProofChange[];
  /** Asked for before, and no longer. */
  readonly withdrawn: readonly { readonly at: string; readonly target: string }[];
  readonly testsToRepeat: readonly TestsToRepeat[];
}

/** What one design says otherwise than another. The difference the other way round has before and after exchanged. */
export function designDifference(before: Design, after: Design): DesignDifference {
  const changes = derivedChanges(derivedValues(before), derivedValues(after));
  const [was, is] = [proofs(before), proofs(after)];
  const moved = [...is.entries()].flatMap(([key, now]): readonly ProofChange[] => {
    const { at, target, proof, decides } = now;
    const old = was.get(key)?.proof;
    if (old === undefined || stands(old) === stands(proof)) return [];
    return [{ at, target, before: old, after: proof, ...(decides === undefined ? {} : { decides }) }];
  });
  return {
    changes,
    unproven: moved.filter((each) => !stands(each.after)),
    proven: moved.filter((each) => stands(each.after)),
    withdrawn: [...was.entries()].flatMap(([key, { at, target }]) => (is.has(key) ? [] : [{ at, target }])),
    testsToRepeat: testsToRepeat(before, after, changes),
  };
}

function derivedChanges(
  before: ReadonlyMap<string, DerivedValue>,
  after: ReadonlyMap<string, DerivedValue>,
): readonly DerivedChange[] {
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((key): readonly DerivedChange[] => {
    const [was, is] = [before.get(key), after.get(key)];
    if (same(was, is)) return [];
    const { sort, at, name } = (was ?? is)!;
    const [old, now] = toldApart(was, is);
    return [
      {
        key,
        sort,
        at,
        name,
        ...(old === undefined ? {} : { before: old }),
        ...(now === undefined ? {} : { after: now }),
      },
    ];
  });
}

function same(one: DerivedValue | undefined, other: DerivedValue | undefined): boolean {
  if (one === other) return true;
  if (one === undefined || other === undefined) return false;
  return one.beside === other.beside && JSON.stringify(one.says) === JSON.stringify(other.says);
}

/** What is said of each; of one part with two sheets, the statements in which they differ. */
function toldApart(was: DerivedValue | undefined, is: DerivedValue | undefined): readonly (Said | undefined)[] {
  const [old, now] = [was?.sheet, is?.sheet];
  if (old === undefined || now === undefined || was!.says !== is!.says) return [was?.says, is?.says];
  const fields = [...new Set([...Object.keys(old), ...Object.keys(now)])]
    .filter((each) => old[each] !== now[each])
    .sort();
  const told = (sheet: Readonly<Record<string, string>>) =>
    fields.map((each) => `${each} ${sheet[each] ?? 'not stated'}`).join(', ');
  return [said`${was!.says}: ${told(old)}`, said`${is!.says}: ${told(now)}`];
}

interface StandingProof {
  readonly at: string;
  readonly target: string;
  readonly proof: Proof;
  readonly decides: Judgement | undefined;
}

function proofs(design: Design): ReadonlyMap<string, StandingProof> {
  const points = design.machines.flatMap((machine) => machine.points);
  return new Map(points.flatMap(proofsAt).map((each) => [`${each.at}|${each.target}`, each]));
}

function proofsAt({ point, appraisal }: DesignedPoint): readonly StandingProof[] {
  if (appraisal === undefined) {
    const names = [...point.targets.map((target) => target.name), 'the chain'];
    return names.map((target) => ({ at: point.of, target, proof: 'no chain', decides: undefined }));
  }
  return [...cells(appraisal), chainCell(appraisal)].map(({ target, outcome, decides }) => ({
    at: point.of,
    target,
    proof: outcome,
    decides,
  }));
}

/** The outcomes that prove something, with a warning or without. */
function stands(proof: Proof): boolean {
  return proof !== 'no chain' && outcomes.indexOf(proof) >= outcomes.indexOf('warns');
}

const tested = ['chain', 'limits', 'alarm', 'scaling', 'settings'] as const;

function testsToRepeat(before: Design, after: Design, changes: readonly DerivedChange[]): readonly TestsToRepeat[] {
  const chained = (design: Design) =>
    design.machines
      .flatMap((machine) => machine.points)
      .flatMap((each) => (each.appraisal === undefined ? [] : [each.point.of]));
  const old = new Set(chained(before));
  return chained(after).flatMap((at): readonly TestsToRepeat[] => {
    if (!old.has(at)) return [{ at, because: ['new'] }];
    const because = tested.filter((sort) => changes.some((each) => each.at === at && each.sort === sort));
    return because.length === 0 ? [] : [{ at, because }];
  });
}
