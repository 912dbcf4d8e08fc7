import { asMeasured, occasionOf } from '../../packages/core/src/acceptance/testing/as-measured.ts';
import {
  type BesideRecords,
  type CheckResult,
  comparison,
  type Design,
  type DesignedMachine,
  type DesignedPoint,
  type MeasuredRecord,
  type Occasion,
  type RehearsalScript,
  type RehearsedRecord,
  rehearsedMotion,
  type ThroughChain,
  throughChain,
} from '../../packages/core/src/index.ts';
import { known } from '../reading.ts';
import { type ChainedPoint, chainedPoints, silent } from '../rehearsal/chains.ts';

/** Points of the examples whose chain gives a waveform that a recorder takes, and whose prediction is known. */
export function recordedPoints(): readonly ChainedPoint[] {
  return chainedPoints().filter(({ point }) => {
    const { prediction } = point.appraisal!;
    return (
      prediction.chain.transducer.signal === 'dynamic' &&
      prediction.response.known &&
      prediction.noise.known &&
      (prediction.drive?.known ?? true)
    );
  });
}

/** A design of these machines alone: a comparison asks for nothing else of it. */
export function designOf(...machines: readonly DesignedMachine[]): Design {
  return { plant: {} as Design['plant'], machines, loops: [], findings: [], verdict: 'proven' };
}

export function rehearsed(
  { machine, point }: Pick<ChainedPoint, 'machine' | 'point'>,
  script: Partial<RehearsalScript>,
  chain: Partial<ThroughChain> = {},
): RehearsedRecord {
  const whole: RehearsalScript = { ...silent, seconds: 8, rate: 25_600, lead: 1, healthy: 0.5, ...script };
  const motion = known(rehearsedMotion(machine, point, whole));
  return known(
    throughChain(point.appraisal!.prediction, motion, { seed: whole.seed + 77, recordRate: 12_800, ...chain }),
  );
}

/** The speed of the shaft of a point at a state of its machine, in hertz. */
export function speedOf(machine: DesignedMachine, point: DesignedPoint, state = 'highest'): number {
  const shaft = point.stated.shaft ?? machine.frequencies.reference;
  const row = machine.frequencies.shafts.find((each) => each.shaft === shaft)!;
  return known(row.cells.find((each) => each.state === state)!.frequency);
}

export function running(speed: number, record: RehearsedRecord, more = {}): MeasuredRecord {
  return asMeasured(record, occasionOf('running', { speed }), more);
}

export function checked(
  place: Pick<ChainedPoint, 'machine'>,
  records: readonly MeasuredRecord[],
  beside: BesideRecords = {},
): readonly CheckResult[] {
  return comparison(designOf(place.machine), records, beside).results;
}

export function of(results: readonly CheckResult[], check: string): readonly CheckResult[] {
  return results.filter((each) => each.check === check);
}

export type { Occasion };
