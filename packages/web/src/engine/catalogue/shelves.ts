import {
  type Fields,
  fieldOf,
  isOptional,
  type Plant,
  type PlantPoint,
  type Shelf,
  shelves,
  valueIfStated,
} from '@soundpost/core';
import { yamlAt } from '@soundpost/files';
import type { CatalogueTexts } from '../read-plant.ts';
import { type AnyPart, kindOn, partKinds } from './part-kinds.ts';
import type { EntryView, Owner, ShelfView } from './views.ts';

/** The text of the plant file and of the catalogues it names. */
export interface Texts {
  readonly text: string;
  readonly catalogues: CatalogueTexts;
}

/** Every part at hand, shelf by shelf. */
export function shelfViews(plant: Plant, texts: Texts): readonly ShelfView[] {
  const owner = ownership(texts);
  return shelves.map((shelf) => ({
    shelf,
    kinds: partKinds[shelf].map(({ kind, name }) => ({ kind, name })),
    entries: (plant.catalogue[shelf] as readonly AnyPart[]).map((part) => entryView(plant, shelf, part, owner)),
  }));
}

function entryView(plant: Plant, shelf: Shelf, part: AnyPart, owner: OwnerOf): EntryView {
  const kind = kindOn(shelf, part.kind);
  const fields = (kind?.dataSheet ?? {}) as Fields;
  const remark = part.sheet.values.remark;
  const shown = remark === undefined ? undefined : valueIfStated(remark);
  return {
    shelf,
    name: part.name,
    kindName: kind?.name ?? part.kind,
    remark: typeof shown === 'string' ? shown : '',
    owner: owner(shelf, part.name),
    missing: Object.entries(fields).filter(
      ([key, entry]) => !isOptional(entry) && part.sheet.values[key]?.known !== true,
    ).length,
    used: usesOf(plant, part).length,
    words: [part.name, part.kind, kind?.name, shown, ...statedWords(fields, part)].join(' ').toLowerCase(),
  };
}

/** The words of a sheet that say something: the choices made in it. */
function statedWords(fields: Fields, { sheet }: AnyPart): readonly string[] {
  return Object.entries(fields).flatMap(([key, entry]) => {
    const field = fieldOf(entry);
    const stated = sheet.values[key];
    return field.type === 'choice' && stated?.known === true ? [field.show(stated.value)] : [];
  });
}

type OwnerOf = (shelf: Shelf, name: string) => Owner;

/** Whose each entry is, from the texts themselves. */
export function ownership({ text, catalogues }: Texts): OwnerOf {
  const own = text.includes('parts:');
  return (shelf, name) => {
    if (!own || yamlAt(text, ['parts', shelf, name]) === undefined) return 'catalogue';
    return catalogueText(catalogues, shelf, name) === undefined ? 'plant' : 'changed';
  };
}

/** An entry as its catalogue writes it; of several the last, which hides the others. */
export function catalogueText(catalogues: CatalogueTexts, shelf: Shelf, name: string): string | undefined {
  return Object.values(catalogues)
    .map((each) => yamlAt(each.text, [shelf, name]))
    .findLast((each) => each !== undefined);
}

/** Where a part is chosen, and as what. */
export function usesOf(plant: Plant, part: AnyPart): readonly { readonly of: string; readonly place: string }[] {
  return plant.machines.flatMap((machine) =>
    machine.points.flatMap((point) => {
      const of = `${machine.name}/${point.statement.name}`;
      return placesIn(point)
        .filter(([, each]) => each === part)
        .map(([place]) => ({ of, place }));
    }),
  );
}

function placesIn({ way, chosen }: PlantPoint): readonly (readonly [place: string, part: unknown])[] {
  return [
    ...(chosen === undefined ? [] : [['transducer', chosen.transducer] as const, ['mount', chosen.mount] as const]),
    ...(way === undefined
      ? []
      : [
          ['cable', way.cable] as const,
          ...way.inLine.map((each, index) => [`part ${index + 1} in the line`, each] as const),
          ...(way.onward ?? []).map((each) => ['cable further on', each.cable] as const),
          ['input', way.input] as const,
        ]),
  ];
}
