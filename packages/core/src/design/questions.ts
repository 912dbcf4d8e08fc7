import type { Judgement } from '../chain/rules/rule.ts';
import type { Missing } from '../quantity/index.ts';
import { appraisal } from '../selection/appraisal.ts';
import { openValues, type Subject, unstatedOf } from '../selection/assumptions.ts';
import { verdictOf } from '../selection/flip-points.ts';
import type { Design, DesignedPoint } from './design.ts';
import type { Plant } from './plant.ts';

/** Something that is not known, and what hangs on the answer. */
export interface Question {
  readonly of: string;
  readonly what: string;
  /** Who could answer, where somebody said so. */
  readonly ask: string | undefined;
  /** What it is believed to lie between. */
  readonly between: { readonly low: string; readonly high: string } | undefined;
  /** The points it stands at. */
  readonly points: readonly string[];
  /** How many judgements cannot be made without it. */
  readonly judgements: number;
  /**
   * What the answer could turn: the `verdict` on a chain between the bounds, `nothing` there, or it is `not bounded` and
   * anything may hang on it.
   */
  readonly turns: 'verdict' | 'not bounded' | 'nothing';
}

/**
 * What to ask, the answer that would change most first: one that turns a verdict between its bounds, then one without
 * bounds by the number of judgements that wait for it, then one whose bounds change nothing.
 */
export function questions(design: Design): readonly Question[] {
  const all = design.machines.flatMap((machine) => machine.points.flatMap((point) => questionsAt(design.plant, point)));
  const merged = new Map<string, Question>();
  for (const each of all) {
    const key = `${each.of}/${each.what}`;
    const before = merged.get(key);
    merged.set(key, before === undefined ? each : together(before, each));
  }
  return [...merged.values()].sort(
    (a, b) =>
      weight[a.turns] - weight[b.turns] ||
      b.judgements - a.judgements ||
      b.points.length - a.points.length ||
      compared(a, b),
  );
}

const weight: Readonly<Record<Question['turns'], number>> = { verdict: 0, 'not bounded': 1, nothing: 2 };

function compared(a: Question, b: Question): number {
  const [left, right] = [`${a.of}/${a.what}`, `${b.of}/${b.what}`];
  return left < right ? -1 : left > right ? 1 : 0;
}

function together(a: Question, b: Question): Question {
  return {
    ...a,
    points: [...new Set([...a.points, ...b.points])],
    judgements: a.judgements + b.judgements,
    turns: weight[a.turns] <= weight[b.turns] ? a.turns : b.turns,
  };
}

function questionsAt(plant: Plant, designed: DesignedPoint): readonly Question[] {
  const { point, stated } = designed;
  const judgements = designed.appraisal?.judgements ?? [];
  const waiting = (missing: Missing) => judgements.filter((each) => waitsFor(each, missing)).length;
  const subject: Subject | undefined =
    stated.way === undefined || stated.chosen === undefined
      ? undefined
      : { point, parts: { ...stated.way, ...stated.chosen } };
  const asked = new Map<string, Missing>();
  const missing = [
    ...judgements.flatMap((each) => each.missing ?? []),
    ...designed.budgets.flatMap((each) => (each.budget.known ? [] : each.budget.missing)),
    ...(designed.alarms?.register.flatMap((row) => (row.level.known ? [] : row.level.missing)) ?? []),
  ];
  // What a judgement waits for may hide a second unknown behind the first.
  if (subject !== undefined) missing.push(...unstatedOf(subject.parts));
  for (const each of missing) asked.set(`${each.of}/${each.what}`, each);
  const open = subject === undefined ? [] : openValues(subject);
  return [...asked.values()].map((each): Question => {
    const bounded = open.find((value) => value.of === each.of && value.what === each.what);
    const judge = (end: 'low' | 'high') => {
      const filled = bounded!.filled(subject!, end);
      return verdictOf(appraisal(filled.point, filled.parts, plant.policy));
    };
    return {
      of: each.of,
      what: each.what,
      ask: bounded?.ask,
      between: bounded?.between,
      points: [point.of],
      judgements: waiting(each),
      turns: bounded === undefined ? 'not bounded' : judge('low') === judge('high') ? 'nothing' : 'verdict',
    };
  });
}

function waitsFor(judgement: Judgement, missing: Missing): boolean {
  return judgement.missing?.some((each) => each.of === missing.of && each.what === missing.what) === true;
}
