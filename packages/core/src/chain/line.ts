import { type Answer, answer, fromAll } from '../quantity/index.ts';
import type { CableModel } from './cable/cable-kind.ts';
import type { ConstantCurrent } from './input/input-kind.ts';
import type { SupplyModel } from './supply/supply-kind.ts';
import type { Feed } from './transducer/transducer-kind.ts';

/** What lies between transducer and input, in order: lengths of cable, and the parts they lead to. */
export type LineElement =
  | { readonly is: 'cable'; readonly cable: CableModel }
  | { readonly is: 'part'; readonly part: SupplyModel; readonly name: string; readonly tag: string | undefined };

/** The part of a line that the transducer feels: all of it, or up to the isolator that feeds it. */
export interface FieldSide {
  readonly elements: readonly LineElement[];
  readonly isolator: SupplyModel | undefined;
}

export function fieldSide(line: readonly LineElement[]): FieldSide {
  const cut = line.findIndex((each) => each.is === 'part' && each.part.isolation !== undefined);
  const at = line[cut];
  return {
    elements: cut < 0 ? line : line.slice(0, cut),
    isolator: at?.is === 'part' ? at.part : undefined,
  };
}

/** What stands in a line, without its cables. */
export function partsOf(line: readonly LineElement[]): readonly SupplyModel[] {
  return line.flatMap((each) => (each.is === 'part' ? [each.part] : []));
}

export function cablesOf(line: readonly LineElement[]): readonly CableModel[] {
  return line.flatMap((each) => (each.is === 'cable' ? [each.cable] : []));
}

/** A sum of answers, zero of none. */
export function total(answers: readonly Answer<number>[]): Answer<number> {
  return answers.reduce<Answer<number>>((sum, each) => fromAll({ sum, each }, (v) => v.sum + v.each), answer(0));
}

/** Resistance of everything the transducer is fed through: cables there and back, what stands between, its source. */
export function lineResistance(line: readonly LineElement[]): Answer<number> {
  const { elements, isolator } = fieldSide(line);
  const along = elements.flatMap((each) =>
    each.is === 'cable' ? [each.cable.loopResistance] : resistanceOf(each.part),
  );
  return total([...along, ...(isolator === undefined ? [] : resistanceOf(isolator))]);
}

function resistanceOf(part: SupplyModel): readonly Answer<number>[] {
  return part.resistance === undefined ? [] : [part.resistance];
}

/** Capacitance of every cable that the transducer itself must drive. */
export function lineCapacitance(line: readonly LineElement[]): Answer<number> {
  return total(cablesOf(fieldSide(line).elements).map((cable) => cable.capacitance));
}

/** What feeds a constant-current transducer: the isolator where one stands in the line, otherwise the input. */
export function feeding(
  line: readonly LineElement[],
  ofInput: ConstantCurrent | undefined,
): ConstantCurrent | undefined {
  const { isolator } = fieldSide(line);
  return isolator === undefined ? ofInput : isolator.isolation?.constantCurrent;
}

/** As what the signal arrives at the input, or the part that does not take what stands before it. */
export type Arrival =
  | { readonly feed: Answer<Feed>; readonly refused: undefined }
  | { readonly feed: Answer<Feed>; readonly refused: SupplyModel };

export function arrival(feed: Feed, line: readonly LineElement[]): Arrival {
  let arrives: Answer<Feed> = answer(feed);
  for (const part of partsOf(line)) {
    if (part.isolation === undefined || !arrives.known) continue;
    if (!part.isolation.takes.includes(arrives.value)) return { feed: arrives, refused: part };
    arrives = part.isolation.gives;
  }
  return { feed: arrives, refused: undefined };
}
