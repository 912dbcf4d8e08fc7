import type { Answer } from '../quantity/index.ts';
import type { CableModel } from './cable/cable-kind.ts';
import type { Cable } from './cable/kinds.ts';
import type { ChainParts, MeasuringChain } from './chain.ts';

/** A length of cable and the two places it joins. */
export interface RunOfCable {
  /** Counted from the transducer: 1, 2. */
  readonly number: number;
  readonly cable: Cable;
  readonly length: Answer<number>;
  readonly from: string;
  /** Absent where it leads on from a place the line does not have. */
  readonly to: string | undefined;
  /** What it puts in the line; absent where it stands nowhere in it. */
  readonly model: CableModel | undefined;
}

/** Every length of cable of a chain from the transducer to the input, each with what it joins; none is left out. */
export function cableRuns({ parts, line }: MeasuringChain): readonly RunOfCable[] {
  const { cable, cableLength, inLine, onward = [] } = parts;
  const models = line.flatMap((each) => (each.is === 'cable' ? [each.cable] : []));
  const placed = onward.filter(({ behind }) => behind >= 0 && behind < inLine.length);
  const ordered = inLine.flatMap((_, place) => placed.filter((each) => each.behind === place));
  const lost = onward.filter((each) => !placed.includes(each));
  const starts = [-1, ...ordered.map((each) => each.behind)];
  const runs = [{ cable, length: cableLength }, ...ordered].map(
    (run, index): RunOfCable => ({
      number: index + 1,
      cable: run.cable,
      length: run.length,
      from: placeName(parts, starts[index]!),
      // What stands beside another part without a cable between them stands in one place with it.
      to: placeName(parts, starts[index]! + 1),
      model: models[index],
    }),
  );
  return [
    ...runs,
    ...lost.map(
      (run, index): RunOfCable => ({
        number: runs.length + index + 1,
        cable: run.cable,
        length: run.length,
        from: `place ${run.behind + 1} of the line`,
        to: undefined,
        model: undefined,
      }),
    ),
  ];
}

/** −1 is the transducer, the number of parts the input. */
function placeName({ transducer, inLine, tags, input }: ChainParts, place: number): string {
  if (place < 0) return transducer.name;
  const part = inLine[place];
  return part === undefined ? input.name : (tags?.[place] ?? part.name);
}
