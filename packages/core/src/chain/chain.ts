import { type Answer, answer, fromAll, type Missing, unanswered } from '../quantity/index.ts';
import type { CableModel } from './cable/cable-kind.ts';
import type { Cable } from './cable/kinds.ts';
import { cableKinds } from './cable/kinds.ts';
import type { ConstantCurrent, InputModel } from './input/input-kind.ts';
import { type Input, inputKinds } from './input/kinds.ts';
import { arrival, feeding, type LineElement, partsOf } from './line.ts';
import { asFound, asMounted, type MeasuredFacts } from './measured-facts.ts';
import { type Mount, mountKinds } from './mount/kinds.ts';
import type { MountModel } from './mount/mount-kind.ts';
import { kindCalled } from './part-kind.ts';
import { mismatch, type Stage } from './stage.ts';
import { type Supply, supplyKinds } from './supply/kinds.ts';
import type { SupplyModel } from './supply/supply-kind.ts';
import { type Transducer, transducerKinds } from './transducer/kinds.ts';
import type { Feed, TransducerModel } from './transducer/transducer-kind.ts';

/** The parts somebody wants to put in a row. */
export interface ChainParts {
  readonly transducer: Transducer;
  readonly mount: Mount;
  readonly cable: Cable;
  readonly cableLength: Answer<number>;
  /** Supplies and whatever else stands in the line, from the transducer to the input. */
  readonly inLine: readonly Supply[];
  /** Further lengths of cable, each behind the part in the line it leads on from. */
  readonly onward?: readonly OnwardCable[];
  /** What the drawings call the parts in the line, by their places in it: `ZB-201/1`. */
  readonly tags?: readonly (string | undefined)[];
  readonly input: Input;
  /** What was measured of the installed chain, where it was. */
  readonly measured?: MeasuredFacts;
}

/** A cable that leads on from the part at that place in the line. */
export interface OnwardCable {
  readonly behind: number;
  readonly cable: Cable;
  readonly length: Answer<number>;
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
  /** The same parts with every length of cable, from the transducer to the input. */
  readonly line: readonly LineElement[];
  readonly input: InputModel;
  /** What feeds a constant-current transducer here: an isolator in the line, or the input. */
  readonly fedBy: ConstantCurrent | undefined;
  /** Output of the line per motion, SI, well inside the band: the transducer's, by the gains that stand in the line. */
  readonly sensitivity: Answer<number>;
  /** As what the signal arrives at the input. */
  readonly arrives: Answer<Feed>;
  /** The part in the line that does not take what the transducer gives. */
  readonly refused: SupplyModel | undefined;
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
  const { measured } = parts;
  const standing =
    measured === undefined ? { transducer: parts.transducer, mount } : asMounted(parts.transducer, mount, measured);
  const offered = modelOf(transducerKinds, standing.transducer, standing.mount) as TransducerModel;
  const cable = modelOf(cableKinds, parts.cable, parts.cableLength) as CableModel;
  const input = modelOf(inputKinds, parts.input) as InputModel;
  const line = lineOf(parts, cable);
  const transducer = outputTaken(offered, line, input);
  const { feed, refused } = arrival(transducer.feed, line);
  const meets = refused === undefined && feed.known && input.takes.includes(feed.value);
  const doubt = meets || refused !== undefined ? undefined : doubtAbout(feed, input);
  return {
    of: `${parts.transducer.name} on ${parts.mount.name}, ${lengthText(parts.cableLength)} ${parts.cable.name}, ${parts.input.name}`,
    parts,
    transducer,
    mount,
    cable,
    inLine: partsOf(line),
    line,
    input,
    fedBy: feeding(line, input.constantCurrent),
    sensitivity: sensitivityBehind(transducer, partsOf(line)),
    arrives: feed,
    refused,
    meets,
    doubt,
    stages:
      doubt === undefined ? foundStages(rowOfStages(transducer, line, input, meets), measured) : unanswered(doubt),
  };
}

function foundStages(stages: Answer<readonly Stage[]>, measured: MeasuredFacts | undefined): Answer<readonly Stage[]> {
  return measured === undefined ? stages : fromAll({ stages }, (known) => asFound(known.stages, measured));
}

/** Of a device with two outputs the one that reaches this input; the first where neither does. */
function outputTaken(offered: TransducerModel, line: readonly LineElement[], input: InputModel): TransducerModel {
  const other = offered.otherOutput;
  if (other === undefined) return offered;
  const reaches = (output: TransducerModel) => {
    const { feed, refused } = arrival(output.feed, line);
    return refused === undefined && feed.known && input.takes.includes(feed.value);
  };
  return !reaches(offered) && reaches(other) ? other : offered;
}

/** The first cable, then each part with the cable that leads on from it. */
function lineOf(parts: ChainParts, first: CableModel): readonly LineElement[] {
  const along = parts.inLine.flatMap((part, place): readonly LineElement[] => {
    const behind = parts.onward?.filter((each) => each.behind === place) ?? [];
    return [
      {
        is: 'part',
        part: modelOf(supplyKinds, part) as SupplyModel,
        name: part.name,
        tag: parts.tags?.[place],
      },
      ...behind.map(({ cable, length }) => ({
        is: 'cable' as const,
        cable: modelOf(cableKinds, cable, length) as CableModel,
      })),
    ];
  });
  return [{ is: 'cable', cable: first }, ...along];
}

function doubtAbout(feed: Answer<Feed>, input: InputModel): readonly Missing[] | undefined {
  if (!feed.known) return feed.missing;
  return input.perhaps?.takes.includes(feed.value) ? input.perhaps.missing : undefined;
}

function sensitivityBehind(transducer: TransducerModel, inLine: readonly SupplyModel[]): Answer<number> {
  const gains = inLine.flatMap((part) => (part.isolation === undefined ? [] : [part.isolation.gain]));
  return gains.reduce((product, gain) => fromAll({ product, gain }, (v) => v.product * v.gain), transducer.sensitivity);
}

function rowOfStages(
  transducer: TransducerModel,
  line: readonly LineElement[],
  input: InputModel,
  meets: boolean,
): Answer<readonly Stage[]> {
  if (!transducer.stages.known) return transducer.stages;
  const leaves = transducer.stages.value.at(-1)?.leaves ?? 'voltage';
  const along = line.map((each) =>
    each.is === 'cable' ? each.cable.stages(leaves) : (each.part.stages?.(leaves) ?? answer([])),
  );
  const through = along.reduce<Answer<readonly Stage[]>>(
    (row, each) => fromAll({ row, each }, (known) => [...known.row, ...known.each]),
    answer([]),
  );
  const rest: Answer<readonly Stage[]> = meets
    ? fromAll({ through, end: input.stages }, (known) => [...known.through, ...known.end])
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
