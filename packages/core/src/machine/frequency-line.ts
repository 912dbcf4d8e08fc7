import { type Answer, type Fraction, thenAnswer } from '../quantity/index.ts';
import type { Clause } from '../source/source.ts';
import { type ElementLine, noSlip, type Slip } from './element.ts';
import type { FrequencyForm } from './form.ts';
import { kindOf } from './kinds.ts';
import { oneHertz, type Reduced } from './reduced.ts';
import { shaftLines } from './shaft.ts';
import { reducedForm, type SolvedTrain } from './solved-train.ts';
import { boundsOver, type OperatingState, valueOver } from './state.ts';
import type { Train } from './train.ts';

/** A frequency that arises in a train, at every speed of its range. */
export interface FrequencyLine {
  /** `pump-drive-end/outer-ring`; of a shaft, `pump/1x`. */
  readonly name: string;
  readonly meaning: string;
  /** The element, or the shaft, that makes it. */
  readonly element: string;
  readonly madeBy: 'shaft' | 'element';
  /** As a sum over shaft speeds, line frequency, slip frequency and constants. */
  readonly form: Answer<FrequencyForm>;
  /** The same over what is independent at this train. */
  readonly reduced: Answer<Reduced>;
  readonly slip: Slip;
  readonly harmonics: number;
  readonly assumed: readonly string[];
  readonly sources: readonly Clause[];
}

/** Every frequency line of a train: the orders of each shaft first, then what each element makes. */
export function frequencyLines(solved: SolvedTrain): readonly FrequencyLine[] {
  const { train } = solved;
  const carried = carriedShafts(train);
  const ofShafts = train.shafts
    .filter((shaft) => !carried.has(shaft))
    .flatMap((shaft) => shaftLines(shaft).map((line) => frequencyLine(solved, shaft, 'shaft', line)));
  const ofElements = train.elements.flatMap((element) =>
    kindOf(element)
      .lines(element.sheet, { element: element.name, shafts: element.shafts })
      .map((line) => frequencyLine(solved, element.name, 'element', line)),
  );
  return [...ofShafts, ...ofElements];
}

/** Shafts that another one carries round: how often they turn against the housing is no line. */
function carriedShafts(train: Train): ReadonlySet<string> {
  return new Set(
    train.elements.flatMap((element) => {
      const shafts = element.shafts as Readonly<Record<string, string | undefined>>;
      return (kindOf(element).carriedPlaces ?? []).flatMap((role: string) => shafts[role] ?? []);
    }),
  );
}

/** One turn of a shaft against the housing, of a carried shaft too. */
export function onceAround(solved: SolvedTrain, shaft: string): FrequencyLine {
  return frequencyLine(solved, shaft, 'shaft', shaftLines(shaft)[0]!);
}

/** Whether a line stays where it is at every speed: a mode, a carrier, twice the frequency of the mains. */
export function standsStill({ reduced }: FrequencyLine): boolean {
  return reduced.known && reduced.value.every((term) => term.of === oneHertz);
}

function frequencyLine(
  solved: SolvedTrain,
  element: string,
  madeBy: FrequencyLine['madeBy'],
  line: ElementLine,
): FrequencyLine {
  return {
    name: `${element}/${line.name}`,
    meaning: line.meaning,
    element,
    madeBy,
    form: line.form,
    reduced: thenAnswer(line.form, (form) => reducedForm(solved, form)),
    slip: line.slip ?? noSlip,
    harmonics: line.harmonics ?? 1,
    assumed: line.assumed ?? [],
    sources: line.sources,
  };
}

/** The kinematic frequency of a line in hertz, or what is missing to know it. */
export function frequencyAt(line: FrequencyLine, state: OperatingState): Answer<number> {
  return thenAnswer(line.reduced, (form) => valueOver(form, state.sources));
}

/** Where the line may lie in hertz, its slip included; nothing where even that is open. */
export function frequencyBetween(
  line: FrequencyLine,
  state: OperatingState,
): { readonly low: number; readonly high: number } | undefined {
  if (!line.reduced.known) return undefined;
  const bounds = boundsOver(line.reduced.value, state.sources);
  if (bounds === undefined) return undefined;
  return { low: bounds.low * (1 + line.slip.low), high: bounds.high * (1 + line.slip.high) };
}

/** The one exact factor of a line that is a plain multiple of one source: 1456/15 of the reference speed. */
export function exactRatio(line: FrequencyLine): { readonly of: string; readonly ratio: Fraction } | undefined {
  if (!line.reduced.known || line.reduced.value.length !== 1) return undefined;
  const [term] = line.reduced.value;
  return term?.exact === undefined ? undefined : { of: term.of, ratio: term.exact };
}
