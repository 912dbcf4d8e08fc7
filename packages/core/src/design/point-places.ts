import { valueIfStated } from '../quantity/index.ts';
import type { PlantMachine, PlantPoint } from './plant.ts';

/** By what an element is known to be the one a point sits at: all words of its name stand in that text. */
export type ToldBy = 'what it hears' | 'its location' | 'its name';

/** Which way a transducer looks, as far as its direction says it in so many words. */
export type Looks = 'vertical' | 'horizontal' | 'axial';

/** Where a point sits in the train, from which side its direction is seen, and how the shaft turns seen from there. */
export interface PointPlace {
  /** The name of the point. */
  readonly name: string;
  /** Counted through the points of the machine, from 1. */
  readonly number: number;
  /** The element; nothing where the statement does not tell one from the others. */
  readonly on: { readonly element: string; readonly by: ToldBy } | undefined;
  readonly looks: Looks | undefined;
  /** `seen from the motor`, as stated. */
  readonly seen: string | undefined;
  /** `clockwise`, as stated; seen from where `seen` says. */
  readonly rotation: string | undefined;
}

/** Every point of a machine with its place in the train, as far as what is stated tells it; nothing is guessed. */
export function pointPlaces(machine: PlantMachine): readonly PointPlace[] {
  return machine.points.map((point, index) => ({
    name: point.statement.name,
    number: index + 1,
    on: elementOf(machine, point),
    ...directionOf(point),
  }));
}

function elementOf({ train }: PlantMachine, { statement }: PlantPoint): PointPlace['on'] {
  const all = train.elements.map((each) => each.name);
  const heard = statement.hears === undefined ? all : all.filter((each) => statement.hears!.includes(each));
  if (statement.hears !== undefined && heard.length === 1) return { element: heard[0]!, by: 'what it hears' };
  const texts: readonly (readonly [ToldBy, string])[] = [
    ['its location', valueIfStated(statement.location) ?? ''],
    ['its name', statement.name],
  ];
  for (const [by, text] of texts) {
    const element = theOneNamedIn(text, heard);
    if (element !== undefined) return { element, by };
  }
  return undefined;
}

/** The one element all words of whose name stand in a text; of two, the one of more words; of equals, none. */
function theOneNamedIn(text: string, elements: readonly string[]): string | undefined {
  const said = new Set(wordsOf(text));
  const named = elements
    .map((element) => ({ element, words: wordsOf(element) }))
    .filter(({ words }) => words.length > 0 && words.every((word) => said.has(word)))
    .sort((a, b) => b.words.length - a.words.length);
  const [first, second] = named;
  return first === undefined || first.words.length === second?.words.length ? undefined : first.element;
}

function wordsOf(text: string): readonly string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}

function directionOf({ statement, probes }: PlantPoint): Pick<PointPlace, 'looks' | 'seen' | 'rotation'> {
  const direction = valueIfStated(statement.direction) ?? '';
  const pair = probes?.find((each) => each.kind === 'xy-pair');
  const from = pair?.kind === 'xy-pair' ? valueIfStated(pair.sheet.values.seenFrom) : undefined;
  const rotation = pair?.kind === 'xy-pair' ? valueIfStated(pair.sheet.values.rotation) : undefined;
  const written = /\b(?:seen|viewed|looking|facing)\b.*$/iu.exec(direction)?.[0];
  return {
    looks: looksOf(direction),
    seen: from === undefined ? written : `seen from the ${from}`,
    rotation,
  };
}

/** The word a direction begins with; `about 30 degrees from vertical` begins with none of them. */
function looksOf(direction: string): Looks | undefined {
  const [first] = wordsOf(direction);
  return (['vertical', 'horizontal', 'axial'] as const).find((each) => first?.startsWith(each));
}
