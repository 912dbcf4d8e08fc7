import type { MeasuredFacts } from '../chain/index.ts';
import type { Judgement } from '../chain/rules/rule.ts';
import { assembledDesign, type Design, type DesignedPoint, designedMachine } from '../design/design.ts';
import type { PlantPoint } from '../design/plant.ts';
import { leastMargin } from '../selection/appraisal.ts';
import type { Identified } from './identify/identified.ts';

/** One judgement before and after; what only one of them has was not judged in the other. */
export interface JudgementChange {
  readonly rule: string;
  readonly target?: string;
  readonly before?: Judgement;
  readonly after?: Judgement;
  /** Whether its outcome is another one. */
  readonly turned: boolean;
}

export interface PointHandedBack {
  readonly at: string;
  readonly facts: MeasuredFacts;
  readonly outcome: { readonly before: Judgement['outcome']; readonly after: Judgement['outcome'] };
  /** Least margin in decibels over all judgements that have one. */
  readonly margin: { readonly before: number; readonly after: number };
  /** Judgements whose outcome turned, or whose margin moved by more than a tenth of a decibel. */
  readonly changes: readonly JudgementChange[];
}

export interface HandedBack {
  readonly design: Design;
  readonly verdict: { readonly before: Design['verdict']; readonly after: Design['verdict'] };
  readonly points: readonly PointHandedBack[];
}

/** Margins that move by less than this, in decibels, did not change. */
const moved = 0.1;

/**
 * The design with what was identified in place of what was predicted, judged by the same rules. Machines of which nothing
 * was identified stay as they are. `seed` repeats the trials of the design.
 */
export function handedBack(design: Design, identified: readonly Identified[], seed: number): HandedBack {
  const facts = factsByPoint(identified);
  const machines = design.machines.map((machine) => {
    if (!machine.points.some(({ point }) => facts.has(point.of))) return machine;
    const points = machine.points.map(({ point, stated }) => withFacts(stated, facts.get(point.of)));
    return designedMachine(design.plant, { ...machine.stated, points }, seed);
  });
  const after = assembledDesign({ ...design.plant, machines: machines.map(({ stated }) => stated) }, machines);
  const found = new Map(after.machines.flatMap(({ points }) => points.map((each) => [each.point.of, each] as const)));
  return {
    design: after,
    verdict: { before: design.verdict, after: after.verdict },
    points: design.machines.flatMap(({ points }) =>
      points.flatMap((before) => {
        const own = facts.get(before.point.of);
        return own === undefined ? [] : compared(before, found.get(before.point.of)!, own);
      }),
    ),
  };
}

/** What later records tell of the same thing takes the place of what earlier ones told. */
function factsByPoint(identified: readonly Identified[]): ReadonlyMap<string, MeasuredFacts> {
  const facts = new Map<string, MeasuredFacts>();
  for (const { at, facts: own } of identified) if (own !== undefined) facts.set(at, { ...facts.get(at), ...own });
  return facts;
}

function withFacts(stated: PlantPoint, facts: MeasuredFacts | undefined): PlantPoint {
  if (facts === undefined || stated.way === undefined) return stated;
  return { ...stated, way: { ...stated.way, measured: { ...stated.way.measured, ...facts } } };
}

function compared(before: DesignedPoint, after: DesignedPoint, facts: MeasuredFacts): readonly PointHandedBack[] {
  if (before.appraisal === undefined || after.appraisal === undefined) return [];
  const [was, is] = [keyed(before.appraisal.judgements), keyed(after.appraisal.judgements)];
  const changes = [...new Set([...was.keys(), ...is.keys()])].flatMap((key): readonly JudgementChange[] => {
    const [one, other] = [was.get(key), is.get(key)];
    const turned = one?.outcome !== other?.outcome;
    if (!turned && Math.abs((one?.margin ?? 0) - (other?.margin ?? 0)) < moved) return [];
    const { rule, target } = (other ?? one)!;
    return [
      {
        rule,
        ...(target === undefined ? {} : { target }),
        ...(one === undefined ? {} : { before: one }),
        ...(other === undefined ? {} : { after: other }),
        turned,
      },
    ];
  });
  return [
    {
      at: before.point.of,
      facts,
      outcome: { before: before.appraisal.outcome, after: after.appraisal.outcome },
      margin: { before: leastMargin(before.appraisal), after: leastMargin(after.appraisal) },
      changes,
    },
  ];
}

/** By rule and target, and by its place among several of both. */
function keyed(judgements: readonly Judgement[]): ReadonlyMap<string, Judgement> {
  const seen = new Map<string, number>();
  return new Map(
    judgements.map((each) => {
      const of = `${each.rule} | ${each.target ?? ''}`;
      const count = seen.get(of) ?? 0;
      seen.set(of, count + 1);
      return [`${of} | ${count}`, each] as const;
    }),
  );
}
