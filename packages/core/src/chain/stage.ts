import { type Answer, fromAll } from '../quantity/index.ts';
import { type Complex, magnitude } from '../signal/complex.ts';
import {
  cascade,
  type FirstColumn,
  firstColumn,
  openTransfer,
  straightThrough,
  type TwoPort,
  transferFromJoint,
  type UpperRow,
  upperRow,
} from './two-port.ts';

/** What passes from one part to the next. Stages may only meet at the same port. */
export const ports = ['motion', 'charge', 'voltage', 'current', 'code'] as const;
export type Port = (typeof ports)[number];

/** One step of the signal on its way: what enters, what leaves, what it does in between, what noise it adds. */
export interface Stage {
  readonly name: string;
  /** The part of the chain it belongs to: `transducer ACC-100`. */
  readonly part: string;
  readonly enters: Port;
  readonly leaves: Port;
  through(frequency: number): TwoPort;
  /** Density of its own noise at the port it leaves, per √Hz; unknown noise leaves the response known. */
  readonly noise?: Answer<(frequency: number) => number>;
  /**
   * Rms at the port it leaves that counts in full wherever it is looked for: run-out, or a noise stated as one number,
   * which may all lie in the line.
   */
  readonly residual?: number;
  /** It keeps the direct voltage back: the coupling of an input. */
  readonly blocksDirect?: true;
  /** Frequencies where its response turns sharply, so that a scan does not step over them. */
  readonly features?: readonly number[];
}

/** The whole row of stages as one two-port. */
export function rowOfTwoPorts(stages: readonly Stage[], frequency: number): TwoPort {
  return stages.reduce((port, stage) => cascade(port, stage.through(frequency)), straightThrough);
}

/**
 * From the motion at the first stage to the open end of the last: the upper row of the cascade is all it takes, so the
 * lower one is not worked out. A test holds it against the whole cascade.
 */
export function transfer(stages: readonly Stage[], frequency: number): Complex {
  let upper: UpperRow = straightThrough;
  for (const stage of stages) upper = upperRow(upper, stage.through(frequency));
  return openTransfer(upper);
}

/** Noise density at the open end, each stage's own carried through what follows it; added as squares. */
export function noiseAtEnd(stages: readonly Stage[]): Answer<(frequency: number) => number> {
  const known = Object.fromEntries(
    stages.flatMap((stage, index) => (stage.noise === undefined ? [] : [[index, stage.noise] as const])),
  );
  return fromAll(
    known,
    (noises) => (frequency: number) => addedAtEnd(stages, frequency, (_stage, index) => noises[index]?.(frequency)),
  );
}

/** Residual rms at the open end, carried the same way. */
export function residualAtEnd(stages: readonly Stage[], frequency: number): number {
  if (stages.every((stage) => stage.residual === undefined)) return 0;
  return addedAtEnd(stages, frequency, (stage) => stage.residual);
}

function addedAtEnd(
  stages: readonly Stage[],
  frequency: number,
  own: (stage: Stage, index: number) => number | undefined,
): number {
  const ports = stages.map((stage) => stage.through(frequency));
  // What follows each stage, from the last backwards; then what stands before it, on the way forwards.
  const following: FirstColumn[] = new Array(ports.length);
  let after: FirstColumn = straightThrough;
  for (let index = ports.length - 1; index >= 0; index--) {
    following[index] = after;
    if (index > 0) after = firstColumn(ports[index]!, after);
  }
  let before: UpperRow = straightThrough;
  let squares = 0;
  for (let index = 0; index < stages.length; index++) {
    before = upperRow(before, ports[index]!);
    const source = own(stages[index]!, index);
    if (source === undefined) continue;
    const carried = source * magnitude(transferFromJoint(before, following[index]!));
    squares += carried * carried;
  }
  return Math.sqrt(squares);
}

/** The first place where two stages do not meet at the same port. */
export function mismatch(stages: readonly Stage[]): { readonly from: Stage; readonly to: Stage } | undefined {
  for (const [index, from] of stages.entries()) {
    const to = stages[index + 1];
    if (to !== undefined && from.leaves !== to.enters) return { from, to };
  }
  return undefined;
}
