import { type Complex, magnitude } from '../signal/complex.ts';
import { cascade, openTransfer, straightThrough, type TwoPort, transferFromJoint } from './two-port.ts';

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
  /** Density of its own noise at the port it leaves, per √Hz. */
  noise?(frequency: number): number;
  /**
   * Rms at the port it leaves that counts in full wherever it is looked for: run-out, or a noise stated as one number,
   * which may all lie in the line.
   */
  readonly residual?: number;
  /** Frequencies where its response turns sharply, so that a scan does not step over them. */
  readonly features?: readonly number[];
}

/** The whole row of stages as one two-port. */
export function rowOfTwoPorts(stages: readonly Stage[], frequency: number): TwoPort {
  return stages.reduce((port, stage) => cascade(port, stage.through(frequency)), straightThrough);
}

/** From the motion at the first stage to the open end of the last. */
export function transfer(stages: readonly Stage[], frequency: number): Complex {
  return openTransfer(rowOfTwoPorts(stages, frequency));
}

/** Noise density at the open end, each stage's own carried through what follows it; added as squares. */
export function noiseAtEnd(stages: readonly Stage[], frequency: number): number {
  return addedAtEnd(stages, frequency, (stage) => stage.noise?.(frequency));
}

/** Residual rms at the open end, carried the same way. */
export function residualAtEnd(stages: readonly Stage[], frequency: number): number {
  return addedAtEnd(stages, frequency, (stage) => stage.residual);
}

function addedAtEnd(stages: readonly Stage[], frequency: number, own: (stage: Stage) => number | undefined): number {
  let squares = 0;
  for (const [index, stage] of stages.entries()) {
    const source = own(stage);
    if (source === undefined) continue;
    const before = rowOfTwoPorts(stages.slice(0, index + 1), frequency);
    const after = rowOfTwoPorts(stages.slice(index + 1), frequency);
    const carried = source * magnitude(transferFromJoint(before, after));
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
