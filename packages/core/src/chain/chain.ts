import { type Answer, answer, fromAll, type Missing, unanswered } from '../quantity/index.ts';
import type { CableModel } from './cable/cable-kind.ts';
import type { Cable } from './cable/kinds.ts';
import { cableKinds } from './cable/kinds.ts';
import type { InputModel } from './input/input-kind.ts';
import { type Input, inputKinds } from './input/kinds.ts';
import { type Mount, mountKinds } from './mount/kinds.ts';
import type { MountModel } from './mount/mount-kind.ts';
import { kindCalled } from './part-kind.ts';
import { mismatch, type Stage } from './stage.ts';
import { type Supply, supplyKinds } from './supply/kinds.ts';
import type { SupplyModel } from './supply/supply-kind.ts';
import { type Transducer, transducerKinds } from './transducer/kinds.ts';
import type { TransducerModel } from './transducer/transducer-kind.ts';

/** The parts somebody wants to put in a row. */
export interface ChainParts {
  readonly transducer: Transducer;
  readonly mount: Mount;
  readonly cable: Cable;
  readonly cableLength: Answer<number>;
  /** Supplies and whatever else stands in the line, from the transducer to the input. */
  readonly inLine: readonly Supply[];
  readonly input: Input;
}

/** A measuring chain with the models of its parts, ready to be predicted. */
export interface MeasuringChain {
  /** `ACC-100 on stud, 2 m TSP, PORT-24`. */
  readonly of: string;
  readonly parts: ChainParts;
  readonly transducer: TransducerModel;
  readonly mount: MountModel;
  readonly cable: CableModel;
  readonly inLine: readonly SupplyModel[];
  readonly input: InputModel;
  /** From the motion to the code, as far as the stages meet. */
  readonly stages: Answer<readonly Stage[]>;
  /** Whether the input takes what the transducer gives. */
  readonly meets: boolean;
  /** What must be known to tell, where the input takes it perhaps. */
  readonly doubt: readonly Missing[] | undefined;
}

/** Puts parts in a row. A row whose ports do not meet is still a chain: a rule says so, and the rest is judged. */
export function measuringChain(parts: ChainParts): MeasuringChain {
  const mount = modelOf(mountKinds, parts.mount) as MountModel;
  const transducer = modelOf(transducerKinds, parts.transducer, mount) as TransducerModel;
  const cable = modelOf(cableKinds, parts.cable, parts.cableLength) as CableModel;
  const input = modelOf(inputKinds, parts.input) as InputModel;
  const inLine = parts.inLine.map((part) => modelOf(supplyKinds, part) as SupplyModel);
  const meets = input.takes.includes(transducer.feed);
  const doubt = !meets && input.perhaps?.takes.includes(transducer.feed) ? input.perhaps.missing : undefined;
  return {
    of: `${parts.transducer.name} on ${parts.mount.name}, ${lengthText(parts.cableLength)} ${parts.cable.name}, ${parts.input.name}`,
    parts,
    transducer,
    mount,
    cable,
    inLine,
    input,
    meets,
    doubt,
    stages: doubt === undefined ? rowOfStages(transducer, cable, input, meets) : unanswered(doubt),
  };
}

function rowOfStages(
  transducer: TransducerModel,
  cable: CableModel,
  input: InputModel,
  meets: boolean,
): Answer<readonly Stage[]> {
  if (!transducer.stages.known) return transducer.stages;
  const leaves = transducer.stages.value.at(-1)?.leaves ?? 'voltage';
  const rest: Answer<readonly Stage[]> = meets
    ? fromAll({ line: cable.stages(leaves), end: input.stages }, ({ line, end }) => [...line, ...end])
    : answer([]);
  return fromAll({ first: transducer.stages, rest }, ({ first, rest: following }) => {
    const row = [...first, ...following];
    return mismatch(row) === undefined ? row : first;
  });
}

/**
 * The model of a part by its kind. A part of a derived union and the kind of the same word belong together; the
 * compiler cannot see that through a lookup, so this one place says it.
 */
function modelOf(
  list: readonly { readonly kind: string }[],
  part: { readonly kind: string; readonly sheet: unknown },
  surroundings?: unknown,
): unknown {
  const kind = kindCalled(list, part.kind) as unknown as { model(sheet: unknown, surroundings: unknown): unknown };
  return kind.model(part.sheet, surroundings);
}

function lengthText(length: Answer<number>): string {
  return length.known ? `${length.value} m` : 'unknown length of';
}
