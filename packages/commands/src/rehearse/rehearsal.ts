import {
  type Answer,
  answer,
  asSeen,
  type DefectStatement,
  type DesignedMachine,
  type DesignedPoint,
  type FaultStatement,
  fromAll,
  level,
  Refusal,
  type RehearsalScript,
  type RehearsedMotion,
  rehearsedMotion,
  type SpeedCourse,
  throughChain,
} from '@soundpost/core';
import type { RehearsedChain } from '../json/rehearsal-json.ts';
import type { GivenOccasion } from './given-occasion.ts';

export const usualSeconds = 8;
export const usualRate = 51_200;
/** Times the rate of the record at which the motion is made: resonance and slew lie above what is recorded. */
const finer = 2;

/** Share of the smallest level that a healthy machine shows, and its floor. Common practice, no source; --json says so too. */
const healthy = 0.5;
const floorOf = (motion: 'acceleration' | 'displacement') =>
  motion === 'acceleration'
    ? { name: 'floor of the machine', level: level('acceleration', 0.02, 'rms'), band: { low: 5, high: 10_000 } }
    : { name: 'floor of the machine', level: level('displacement', 2e-7, 'rms'), band: { low: 1, high: 1000 } };

/** What is rehearsed at a point. */
export interface RehearsalAsked {
  readonly seconds: number;
  /** Samples a second of the record. */
  readonly recordRate: number;
  readonly seed: number;
  /** How the machine turns, where the occasion lets it. */
  readonly course: SpeedCourse;
  readonly faults: readonly FaultStatement[];
  readonly occasion: GivenOccasion;
}

/** A chain a motion is sent through: the point with it, and what is wrong with it as installed. */
export interface ChainAsked {
  readonly point: DesignedPoint;
  readonly defects: readonly DefectStatement[];
}

export interface Rehearsal {
  readonly script: RehearsalScript;
  readonly motion: Answer<RehearsedMotion>;
  readonly chains: readonly RehearsedChain[];
}

export function rehearsalScript(point: DesignedPoint, asked: RehearsalAsked): RehearsalScript {
  const reference = point.appraisal?.prediction.chain.transducer.reference;
  const { standing } = asked.occasion;
  return {
    seconds: asked.seconds,
    rate: asked.recordRate * finer,
    seed: asked.seed,
    course: standing ? { is: 'standstill' } : asked.course,
    healthy: standing ? 0 : healthy,
    faults: asked.faults,
    background: standing
      ? []
      : [floorOf(reference === undefined || reference === 'casing' ? 'acceleration' : 'displacement')],
  };
}

/** A motion made and sent through each chain; yields what is being done, in words. Throws Refusal. */
export function* rehearsing(
  machine: DesignedMachine,
  point: DesignedPoint,
  asked: RehearsalAsked,
  chains: readonly ChainAsked[],
  detection: number,
): Generator<string, Rehearsal> {
  const script = rehearsalScript(point, asked);
  yield 'making the motion';
  const made = rehearsedMotion(machine, point, script);
  const motion: Answer<RehearsedMotion> = made.known ? answer(asked.occasion.done(made.value)) : made;
  const { coupling, standing } = asked.occasion;
  const through: RehearsedChain[] = [];
  for (const { point: own, defects } of chains) {
    const predicted = own.appraisal?.prediction;
    if (predicted === undefined) {
      throw new Refusal({
        read: own.point.of,
        expected: "a point whose 'chain' names transducer, mount, cable and input",
        suggestion: 'A motion is seen through a chain only.',
      });
    }
    const name = predicted.chain.of;
    yield `sending it through ${name}`;
    const record = motion.known
      ? throughChain(predicted, motion.value, {
          seed: script.seed,
          recordRate: asked.recordRate,
          coupling,
          defects,
        })
      : motion;
    yield `looking at what ${name} shows`;
    const seen = fromAll({ record, motion }, (each) => asSeen(each.record, machine, own, each.motion, detection));
    through.push({ name, defects, record, seen, standing });
  }
  return { script, motion, chains: through };
}
