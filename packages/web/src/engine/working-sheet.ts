import {
  type AnyWorking,
  type Clause,
  type Field,
  type Fields,
  fieldOf,
  isOptional,
  kebab,
  type Output,
  workingCalled,
  workingsByRoom,
} from '@soundpost/core';
import type { CitedView, InputView, WorkingSheetView, WorkingShelf } from './working-views.ts';

type Outputs = Readonly<Record<string, Output<unknown>>>;

/** Every formula by its room; `words` is what a search looks through. */
export function workingShelves(): readonly WorkingShelf[] {
  return workingsByRoom.map(({ room, workings }) => ({
    room,
    workings: workings.map((each) => ({ name: each.name, title: each.title, words: wordsOf(each) })),
  }));
}

function wordsOf({ name, title, inputs, outputs }: AnyWorking): string {
  const meanings = [
    ...Object.values(inputs as Fields).map((each) => fieldOf(each).meaning),
    ...Object.values(outputs as Outputs).map((each) => each.field.meaning),
  ];
  return [name.replaceAll('-', ' '), title, ...meanings].join(' ').toLowerCase();
}

export function workingSheet(name: string): WorkingSheetView {
  const working = workingCalled(name);
  const example = working.example as Readonly<Record<string, string>>;
  return {
    name,
    title: working.title,
    inputs: Object.entries(working.inputs as Fields).map(([key, entry]) =>
      inputView(kebab(key), fieldOf(entry), isOptional(entry), example[kebab(key)] ?? ''),
    ),
    outputs: Object.entries(working.outputs as Outputs).map(([key, { field, formula }]) => ({
      name: kebab(key),
      symbol: field.symbol,
      meaning: field.meaning,
      formula,
      drawn: drawable.has(field.type),
    })),
    holds: working.holds,
    sources: working.sources.map(citedView),
  };
}

/** Results that are a number. */
const drawable: ReadonlySet<string> = new Set(['quantity', 'level', 'count']);

function inputView(name: string, field: Field<unknown>, optional: boolean, initial: string): InputView {
  const { symbol, meaning, expected, example, type, orTable, varied } = field;
  return {
    name,
    symbol,
    meaning,
    expected,
    example,
    initial,
    optional,
    entry:
      type === 'file'
        ? 'file'
        : type === 'choice' || type === 'flag'
          ? 'choice'
          : orTable === true || initial.length > 60
            ? 'lines'
            : 'line',
    choices: choicesOf(field),
    varies: varied !== undefined || type === 'count',
  };
}

/** The words one of which a field takes; none where it takes others too. */
export function choicesOf({ type, schema }: Field<unknown>): readonly string[] {
  if (type === 'flag') return ['yes', 'no'];
  return type === 'choice' && Array.isArray(schema.enum) ? (schema.enum as readonly string[]) : [];
}

export function citedView({ source, place, how }: Clause): CitedView {
  return { title: source.title, place, how: how ?? source.how, note: source.note };
}
