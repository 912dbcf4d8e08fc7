import { assumptions, type DesignedPoint, type Plant, type Subject } from '@soundpost/core';
import type { Edit } from '@soundpost/server/protocol';
import { type Document, isMap, isSeq, parseDocument, stringify } from 'yaml';
import { handleKey, pathOf } from './handles.ts';
import type { CatalogueTexts } from './read-plant.ts';
import type { TrialAsked } from './views.ts';

const shelves = ['transducers', 'mounts', 'cables', 'supplies', 'inputs'] as const;

/** What was measured or drawn was another number: of the one under the hand nothing is known but that it was tried. */
const tried = { status: 'assumed', source: 'tried in the workbench' } as const;

/** What a hand holds, as changes of the plant file; a number of a catalogue part makes the part one of this plant. */
export function keptEdits(
  asked: TrialAsked,
  held: Subject,
  designed: DesignedPoint,
  text: string,
  catalogues: CatalogueTexts,
  plant: Plant,
): readonly Edit[] {
  const [machine = ''] = asked.of.split('/');
  const at = ['machines', machine, 'points', designed.point.name];
  const file = parseDocument(text);
  const number = (path: readonly (string | number)[], shown: string): readonly Edit[] => {
    const stands = file.getIn(path);
    if (!isMap(stands)) return [{ path, yaml: stringify(shown).trim() }];
    const value: Edit = { path: [...path, 'value'], yaml: stringify(shown).trim() };
    if (!stands.has('status') && !stands.has('source')) return [value];
    const said = Object.entries(tried).map(([key, words]): Edit => ({ path: [...path, key], yaml: words }));
    return [value, ...said];
  };
  const placed = Object.entries(asked.parts).map(
    ([place, name]): Edit => ({ path: [...at, 'chain', place], yaml: stringify(name).trim() }),
  );
  const line = asked.inLine === undefined ? [] : [lineEdit(asked.inLine, [...at, 'chain', 'in-line'], file)];
  const adapted = new Map<string, { path: readonly string[]; entry: Record<string, unknown> }>();
  const numbers = assumptions(held).flatMap((each): readonly Edit[] => {
    if ((asked.moved[handleKey(each)] ?? 0) === 0) return [];
    const path = pathOf(each, at, held.parts.cable.sheet.of, designed.point.of);
    if (path !== undefined) return number(path, each.shown);
    const part = partOf(each.of, plant);
    if (part === undefined) return [];
    const known = adapted.get(part.name) ?? {
      path: ['parts', part.shelf, part.name],
      entry: entryOf(part, text, catalogues),
    };
    const key = each.what.replaceAll(' ', '-');
    const before = known.entry[key];
    known.entry[key] =
      typeof before === 'object' && before !== null && 'value' in before
        ? { ...before, value: each.shown, ...('status' in before || 'source' in before ? tried : {}) }
        : each.shown;
    adapted.set(part.name, known);
    return [];
  });
  const parts = [...adapted.values()].map(({ path, entry }): Edit => ({ path, yaml: stringify(entry).trimEnd() }));
  return [...placed, ...line, ...numbers, ...parts];
}

/** The line with its parts swapped; what was said of a place, its tag and the cable behind it, stays with the place. */
function lineEdit(names: readonly string[], path: readonly (string | number)[], file: Document): Edit {
  if (names.length === 0) return { path, yaml: undefined };
  const before = file.getIn(path);
  const stated = isSeq(before) ? (before.toJSON() as readonly unknown[]) : [];
  const places = names.map((name, index) => {
    const place = stated[index];
    const keeps = typeof place === 'object' && place !== null && stated.length === names.length;
    return keeps ? { ...place, part: name } : name;
  });
  return { path, yaml: stringify(places, { collectionStyle: 'flow', lineWidth: 0 }).trim() };
}

interface PlacedPart {
  readonly shelf: string;
  readonly name: string;
}

/** A sheet calls itself by the name of its part, or by a word before it: `transducer ACC-100`. */
function partOf(of: string, plant: Plant): PlacedPart | undefined {
  for (const shelf of shelves) {
    const parts = plant.catalogue[shelf] as readonly { name: string; sheet: { of: string } }[];
    const found = parts.find((part) => part.sheet.of === of);
    if (found !== undefined) return { shelf, name: found.name };
  }
  return undefined;
}

/** The entry as written: in the plant where it has one of that name, otherwise in the first catalogue that has. */
function entryOf({ shelf, name }: PlacedPart, text: string, catalogues: CatalogueTexts): Record<string, unknown> {
  const own = parseDocument(text).getIn(['parts', shelf, name]);
  if (isMap(own)) return own.toJSON() as Record<string, unknown>;
  for (const { text: written } of Object.values(catalogues)) {
    const entry = parseDocument(written).getIn([shelf, name]);
    if (isMap(entry)) return entry.toJSON() as Record<string, unknown>;
  }
  return {};
}
