import { type Cause, type DesignDifference, designDifference, ledBack, Refusal } from '@soundpost/core';
import { applyEdits, type Edit, type StatedChange, statedChanges } from '@soundpost/files';
import { plantOf, type StatedTexts } from '../plant/stated-texts.ts';
import { redesigning, type Seen } from './redesigned.ts';

/** A stated change, in the plant file or in a catalogue that it names. */
export interface PlacedChange extends StatedChange {
  /** Left out: the plant file. */
  readonly catalogue?: string;
}

/** A sheet of the document set that reads otherwise, is new, or is gone. */
export interface SheetChange {
  readonly key: string;
  readonly document: string;
  readonly sheet: string;
  readonly is: 'changed' | 'new' | 'gone';
}

/** What one revision says otherwise than another, and why. */
export interface RevisionDifference {
  readonly stated: readonly PlacedChange[];
  readonly design: DesignDifference;
  readonly sheets: readonly SheetChange[];
  /** By the key of a derived change or a sheet. */
  readonly causes: ReadonlyMap<string, Cause>;
  /** Places in `stated` that cannot be made without the others: the file could not be read in between. */
  readonly notAlone: readonly number[];
}

/** Beyond so many stated changes, those below one place are tried together: each trial reads the plant anew. */
export const mostTrials = 1000;

/** Compares two revisions, and leads each difference back by making and taking back one stated change at a time. */
export function revisionDifference(
  before: StatedTexts,
  after: StatedTexts,
  step: (what: string) => void = () => {},
): RevisionDifference {
  const seen = redesigning();
  const [old, now] = [before, after].map((texts) => seen(plantOf(texts))) as [Seen, Seen];
  const stated = allStated(before, after);
  // A catalogue that only one of them names is at hand for both: naming it is a change of the plant file.
  const [from, to] = [
    { ...before, catalogues: new Map([...after.catalogues, ...before.catalogues]) },
    { ...after, catalogues: new Map([...before.catalogues, ...after.catalogues]) },
  ];
  const design = designDifference(old.design, now.design);
  const sheets = sheetChanges(old.sheets, now.sheets);
  const keys = [...design.changes.map((each) => each.key), ...sheets.map((each) => each.key)];
  const groups = grouped(stated, mostTrials);
  const notAlone: number[] = [];
  const made = groups.map((group, place) => {
    step(`change ${place + 1} of ${groups.length}, made alone`);
    const moves = movedBy(seen, old, from, group, 'edit');
    if (moves === undefined) notAlone.push(...group.places);
    return { moves: moves ?? new Set<string>() };
  });
  const open = keys.filter((key) => !made.some((each) => each.moves.has(key)));
  const undone =
    open.length === 0
      ? []
      : groups.map((group, place) => {
          step(`change ${place + 1} of ${groups.length}, taken back alone`);
          return { moves: movedBy(seen, now, to, group, 'undoing') ?? new Set<string>() };
        });
  const byGroup = ledBack(keys, made, undone);
  const causes = [...byGroup].map(([key, cause]): [string, Cause] => [
    key,
    { ...cause, changes: cause.changes.flatMap((place) => groups[place]!.places) },
  ]);
  return { stated, design, sheets, causes: new Map(causes), notAlone };
}

function sheetChanges(before: Seen['sheets'], after: Seen['sheets']): readonly SheetChange[] {
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((key): readonly SheetChange[] => {
    const [was, is] = [before.get(key), after.get(key)];
    if (was?.text === is?.text) return [];
    const { document, sheet } = (was ?? is)!;
    return [{ key, document, sheet, is: was === undefined ? 'new' : is === undefined ? 'gone' : 'changed' }];
  });
}

function allStated(before: StatedTexts, after: StatedTexts): readonly PlacedChange[] {
  const names = [...before.catalogues.keys()].filter((name) => after.catalogues.has(name));
  return [
    ...statedChanges(before.plant, after.plant),
    ...names.flatMap((catalogue) =>
      statedChanges(before.catalogues.get(catalogue)!, after.catalogues.get(catalogue)!).map((each) => ({
        ...each,
        catalogue,
      })),
    ),
  ];
}

interface Group {
  readonly changes: readonly PlacedChange[];
  readonly places: readonly number[];
}

/** Each change by itself where there are few; otherwise those with the longest common beginning that is short enough. */
export function grouped(stated: readonly PlacedChange[], most: number): readonly Group[] {
  const longest = Math.max(0, ...stated.map((each) => each.path.length));
  for (let length = longest; ; length--) {
    const groups = new Map<string, { changes: PlacedChange[]; places: number[] }>();
    stated.forEach((change, place) => {
      const key = JSON.stringify([change.catalogue ?? null, ...change.path.slice(0, length)]);
      const group = groups.get(key) ?? { changes: [], places: [] };
      group.changes.push(change);
      group.places.push(place);
      groups.set(key, group);
    });
    if (groups.size <= most || length === 0) return [...groups.values()];
  }
}

/** The keys of everything that moves; nothing where a plant so changed cannot be read. */
function movedBy(
  seen: ReturnType<typeof redesigning>,
  from: Seen,
  texts: StatedTexts,
  group: Group,
  which: 'edit' | 'undoing',
): Set<string> | undefined {
  try {
    const catalogues = new Map(texts.catalogues);
    for (const [name, text] of texts.catalogues)
      catalogues.set(name, applyEdits(text, editsOf(group, name, which)).text);
    const plant = applyEdits(texts.plant, editsOf(group, undefined, which)).text;
    const other = seen(plantOf({ ...texts, plant, catalogues }));
    const { changes } = designDifference(from.design, other.design);
    return new Set([...changes, ...sheetChanges(from.sheets, other.sheets)].map((each) => each.key));
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}

function editsOf(group: Group, catalogue: string | undefined, which: 'edit' | 'undoing'): readonly Edit[] {
  return group.changes.filter((each) => each.catalogue === catalogue).map((each) => each[which]);
}
