import type { DesignedMachine, DesignedPoint } from '../design/design.ts';
import {
  type Answer,
  type Band,
  fromAll,
  type Level,
  type Missing,
  type Motion,
  Refusal,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';
import { randomFrom } from '../uncertainty/random.ts';
import { type CourseTerm, type TurningCourse, turningCourse } from './course.ts';
import { placedFault } from './fault-place.ts';
import { healthyParts, measuredReference } from './healthy-parts.ts';
import type { MotionPart } from './part/part.ts';
import { writePart } from './part/write-part.ts';
import { type RehearsalScript, usualLead } from './script.ts';
import { mostSamples } from './spectral.ts';

/** One thing that was put into a motion, with its truth. */
export interface MotionContent {
  readonly name: string;
  readonly by: 'healthy' | 'fault' | 'background' | 'occasion';
  /** Word of the fault it belongs to. */
  readonly fault?: string;
  /** A line, in hertz, at the first and the last sample of the record; the same number twice at one speed. */
  readonly frequency?: { readonly first: number; readonly last: number };
  readonly band?: Band;
  readonly level: Level<Motion>;
  readonly assumed: readonly string[];
}

/** What the surface, or the shaft against the casing, does at a point: samples in SI, and the turns beside them. */
export interface RehearsedMotion {
  readonly of: string;
  readonly rate: number;
  /** Acceleration of a casing; displacement where the motion of a shaft is meant. */
  readonly motion: 'acceleration' | 'displacement';
  /** Lead first, then the record. */
  readonly samples: Float64Array;
  /** Turns of the reference shaft at each sample, 0 at the first of the record. */
  readonly turns: Float64Array;
  readonly reference: string;
  /** Speed of the reference shaft at the first and the last sample of the record, in hertz. */
  readonly speed: { readonly first: number; readonly last: number };
  /** Samples before the record, in which a chain settles. */
  readonly lead: number;
  readonly contents: readonly MotionContent[];
  readonly script: RehearsalScript;
}

interface Ingredient {
  readonly part: MotionPart;
  readonly by: MotionContent['by'];
  readonly fault?: string;
}

/**
 * The motion at a point of a machine by a script: lines of the healthy machine, stated faults, background; every frequency
 * is that of the frequency table at the speed of the instant, its phase the integral of it. Throws Refusal where the script
 * names what the machine has not; unknown where the machine cannot tell a frequency that is asked for.
 */
export function rehearsedMotion(
  machine: DesignedMachine,
  point: DesignedPoint,
  script: RehearsalScript,
): Answer<RehearsedMotion> {
  const lead = Math.round((script.lead ?? usualLead) * script.rate);
  const samples = lead + Math.round(script.seconds * script.rate);
  checkLength(script, samples);
  const course = turningCourse(machine.stated.train, machine.frequencies, script.course, {
    samples,
    rate: script.rate,
    from: lead,
  });
  return thenAnswer(
    fromAll({ course, ingredients: ingredientsOf(machine, point, script) }, (known) => known),
    (known) => written(point, script, known.course, known.ingredients, lead),
  );
}

function checkLength({ seconds, rate }: RehearsalScript, samples: number): void {
  if (!(seconds > 0 && rate > 0)) {
    throw new Refusal({ read: `${seconds} s at ${rate} Hz`, expected: 'a length and a rate above zero' });
  }
  if (samples > mostSamples) {
    throw new Refusal({
      read: `${seconds} s at ${rate} samples a second`,
      expected: `at most ${mostSamples} samples with the lead before them`,
      suggestion: 'Rehearse a shorter record, or at a lower rate.',
    });
  }
}

function ingredientsOf(
  machine: DesignedMachine,
  point: DesignedPoint,
  { healthy, faults, background }: RehearsalScript,
): Answer<readonly Ingredient[]> {
  const ofFaults = faults.map((fault) => {
    const { kind, place } = placedFault(fault, machine, point);
    return fromAll({ parts: kind.parts(fault, place) }, ({ parts }) =>
      parts.map((part): Ingredient => ({ part, by: 'fault', fault: kind.kind })),
    );
  });
  return fromAll(Object.fromEntries(ofFaults.entries()), (known) => [
    ...healthyParts(point, machine.frequencies, healthy).map((part): Ingredient => ({ part, by: 'healthy' })),
    ...Object.values(known).flat(),
    ...background.map(
      ({ name, level, band }): Ingredient => ({ part: { is: 'noise', name, level, band }, by: 'background' }),
    ),
  ]);
}

function written(
  { point, ...designed }: DesignedPoint,
  script: RehearsalScript,
  course: TurningCourse,
  ingredients: readonly Ingredient[],
  lead: number,
): Answer<RehearsedMotion> {
  const reference = measuredReference({ point, ...designed });
  const motion = reference === 'casing' || reference === 'any' ? 'acceleration' : 'displacement';
  const samples = new Float64Array(course.samples);
  const { turns } = course;
  const last = course.samples - 1;
  const fastest = Math.max(turns.frequency(0), turns.frequency(last));
  const missing: Missing[] = [];
  for (const [place, { part }] of ingredients.entries()) {
    // Each ingredient draws from a stream of its own, so that one more does not change the others.
    const random = randomFrom((script.seed + 0x9e37_79b1 * (place + 1)) >>> 0);
    const done = writePart(part, { samples, motion, course, fastest, random });
    if (!done.known) missing.push(...done.missing);
  }
  if (missing.length > 0) return unanswered(missing);
  fadeIn(samples, lead);
  const start = turns.cycles(lead);
  return fromAll(
    { contents: contentsOf(ingredients, course, lead) },
    ({ contents }): RehearsedMotion => ({
      of: point.of,
      rate: script.rate,
      motion,
      samples,
      turns: Float64Array.from(samples, (_, index) => turns.cycles(index) - start),
      reference: course.reference,
      speed: { first: turns.frequency(lead), last: turns.frequency(last) },
      lead,
      contents,
      script,
    }),
  );
}

/** The motion rises over the first half of its lead, so that no step sets the low corners of a chain ringing. */
function fadeIn(samples: Float64Array, lead: number): void {
  const length = lead >> 1;
  for (let index = 0; index < length; index++) samples[index]! *= 0.5 - 0.5 * Math.cos((Math.PI * index) / length);
}

function contentsOf(
  ingredients: readonly Ingredient[],
  course: TurningCourse,
  lead: number,
): Answer<readonly MotionContent[]> {
  const each = ingredients.map(({ part, by, fault }) => {
    const shared = {
      name: part.name,
      by,
      ...(fault === undefined ? {} : { fault }),
      level: part.level,
      assumed: part.assumed ?? [],
    };
    if (part.is === 'noise') return fromAll({}, (): MotionContent => ({ ...shared, band: part.band }));
    const along = course.follow(part.of as readonly CourseTerm[]);
    return fromAll(
      { along },
      ({ along: line }): MotionContent => ({
        ...shared,
        frequency: { first: line.frequency(lead), last: line.frequency(course.samples - 1) },
      }),
    );
  });
  return fromAll(Object.fromEntries(each.entries()), (known) => Object.values(known));
}
