import {
  type AnyField,
  type DesignedMachine,
  type Fields,
  fieldOf,
  isOptional,
  kebab,
  type Plant,
  type Shelf,
  type Showing,
  type Stated,
  shelves,
  statuses,
  words,
} from '@soundpost/core';
import { ruleTextOf } from '@soundpost/documents';
import { choicesOf, citedView } from '../working-sheet.ts';
import { type AnyPart, kindOn } from './part-kinds.ts';
import { ownership, type Texts, usesOf } from './shelves.ts';
import type { EmptySheet, FieldView, PartView } from './views.ts';

/** Every part of a name, with its whole data sheet; `designed` are the machines worked out so far. */
export function partViews(
  plant: Plant,
  texts: Texts,
  name: string,
  designed: readonly DesignedMachine[],
  showing: Showing,
): readonly PartView[] {
  const owner = ownership(texts);
  return shelves.flatMap((shelf) =>
    (plant.catalogue[shelf] as readonly AnyPart[])
      .filter((part) => part.name === name)
      .map((part): PartView => {
        const kind = kindOn(shelf, part.kind);
        return {
          shelf,
          name,
          kind: part.kind,
          kindName: kind?.name ?? part.kind,
          owner: owner(shelf, name),
          fields: Object.entries((kind?.dataSheet ?? {}) as Fields).map(([key, entry]) =>
            fieldView(key, entry, part.sheet.values[key], openBecauseOf(designed, part.sheet.of, words(key)), showing),
          ),
          sources: (kind?.sources ?? []).map(citedView),
          uses: usesOf(plant, part),
        };
      }),
  );
}

/** The empty data sheet of a kind, for a form, and the ways a value may be known. */
export function emptySheet(shelf: Shelf, kind: string): EmptySheet {
  const sheet = (kindOn(shelf, kind)?.dataSheet ?? {}) as Fields;
  return { fields: Object.entries(sheet).map(([key, entry]) => fieldView(key, entry, undefined, [], {})), statuses };
}

function fieldView(
  key: string,
  entry: AnyField,
  stated: Stated<unknown> | undefined,
  leavesOpen: readonly string[],
  showing: Showing,
): FieldView {
  const field = fieldOf(entry);
  const { symbol, meaning, expected, example } = field;
  const about = {
    key: kebab(key),
    symbol,
    meaning,
    expected,
    example,
    optional: isOptional(entry),
    choices: choicesOf(field),
  };
  const nothing = { shown: '', written: '', status: '', source: '', ask: '', between: '', leavesOpen };
  if (stated === undefined) return { ...about, ...nothing, state: 'left out' };
  if (!stated.known) {
    const { ask = '', between } = stated;
    const bounds =
      between === undefined ? '' : `${field.show(between.low, showing)} to ${field.show(between.high, showing)}`;
    return { ...about, ...nothing, state: 'unknown', ask, between: bounds };
  }
  const { value, written, status = '', source = '' } = stated;
  return { ...about, ...nothing, state: 'stated', shown: field.show(value, showing), written, status, source };
}

/** Which rules cannot judge for want of this, and at which points. */
function openBecauseOf(designed: readonly DesignedMachine[], of: string, what: string): readonly string[] {
  const points = new Map<string, Set<string>>();
  for (const { point, appraisal } of designed.flatMap((each) => each.points)) {
    for (const { rule, missing } of appraisal?.judgements ?? []) {
      if (missing?.some((each) => each.of === of && each.what === what) !== true) continue;
      const title = ruleTextOf(rule)?.title ?? rule;
      points.set(title, (points.get(title) ?? new Set()).add(point.of));
    }
  }
  return [...points].map(([title, at]) => `${title} (${[...at].join(', ')})`);
}
