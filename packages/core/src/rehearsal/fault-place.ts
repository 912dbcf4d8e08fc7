import type { DesignedMachine, DesignedPoint } from '../design/design.ts';
import { fixed } from '../machine/form.ts';
import type { FrequencyTable } from '../machine/frequency-table.ts';
import { kindOf, type MachineElement } from '../machine/kinds.ts';
import { type Answer, answer, nearest, Refusal, unanswered } from '../quantity/index.ts';
import type { CourseTerm } from './course.ts';
import type { FaultKind, FaultPlace } from './fault/fault-kind.ts';
import { faultKindCalled, faultKinds } from './fault/kinds.ts';
import type { Mode } from './part/part.ts';
import type { FaultStatement } from './script.ts';

/** The kind of a stated fault, and its place on the machine. Throws Refusal where the machine has no such place. */
export function placedFault(
  { kind: word, at }: FaultStatement,
  machine: DesignedMachine,
  point: DesignedPoint,
): { readonly kind: FaultKind; readonly place: FaultPlace } {
  const kind = faultKindCalled(word);
  if (kind === undefined) {
    throw unknown(
      word,
      'a fault',
      faultKinds.map((each) => each.kind),
    );
  }
  const { train } = machine.stated;
  const fitting =
    kind.at === 'shaft'
      ? train.shafts
      : train.elements.filter((each) => kind.at.includes(each.kind)).map((each) => each.name);
  if (!fitting.includes(at)) {
    const what = kind.at === 'shaft' ? 'a shaft' : `an element of kind ${kind.at.join(' or ')}`;
    throw unknown(at, `${what} of ${machine.stated.name} for '${word}'`, fitting);
  }
  const element = kind.at === 'shaft' ? undefined : train.elements.find((each) => each.name === at);
  return { kind, place: faultPlace(at, element, machine.frequencies, modesAt(point)) };
}

function unknown(read: string, what: string, known: readonly string[]): Refusal {
  const near = nearest(read, known);
  return new Refusal({
    read,
    expected: known.length === 0 ? `${what}, of which there is none` : `${what}: ${known.join(', ')}`,
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}

interface RingingModes {
  readonly modes: readonly Mode[];
  readonly assumed: readonly string[];
}

/**
 * What a blow sets ringing: modes inside the bands of the bursts that are to be seen at the point, otherwise near 3 kHz.
 * No drawing tells the modes of a housing before it is tapped. Common practice, no source.
 */
function modesAt({ point }: DesignedPoint): RingingModes {
  const band = point.targets.flatMap((each) =>
    each.observable.scansBand && each.band.known ? [each.band.value] : [],
  )[0];
  const centre = band === undefined ? 3000 : Math.sqrt(band.low * band.high);
  const told =
    band === undefined
      ? 'The housing rings at 3 kHz with 3 % of damping: no band of bursts is stated at the point.'
      : 'The housing rings in the middle of the stated band of bursts and 1.6 times above it, with 3 % of damping.';
  return {
    modes: [
      { frequency: centre, damping: 0.03, share: 1 },
      { frequency: 1.6 * centre, damping: 0.03, share: 0.6 },
    ],
    assumed: [told],
  };
}

function faultPlace(
  at: string,
  element: MachineElement | undefined,
  table: FrequencyTable,
  { modes, assumed }: RingingModes,
): FaultPlace {
  return {
    at,
    element,
    modes,
    modesAssumed: assumed,
    line: (name, times = 1): Answer<readonly CourseTerm[]> => {
      const row = table.rows.find((each) => each.line.name === `${at}/${name}`);
      return row === undefined
        ? unanswered([{ of: `${table.of}/${at}`, what: `line '${name}'` }])
        : answer([{ line: row.line, times }]);
    },
    turn: (role) => {
      const shafts = element?.shafts as Readonly<Record<string, string>> | undefined;
      const shaft = shafts === undefined ? at : shafts[role ?? kindOf(element!).places[0]!];
      if (shaft === undefined || shaft === fixed) return undefined;
      const row = table.shafts.find((each) => each.shaft === shaft);
      return row === undefined
        ? unanswered([{ of: `${table.of}/${shaft}`, what: 'speed' }])
        : answer([{ line: row.turn, times: 1 }]);
    },
  };
}
