import type { Plant, Showing } from '@soundpost/core';
import type { Edit } from '@soundpost/server/protocol';
import { stringify } from 'yaml';
import { restatedEdits } from '../machine/statement-edits.ts';
import { hasOrigin, type Origin, originWords } from '../origin.ts';
import { type PastePlace, pastePlace, placeOf } from './paste-place.ts';
import {
  isStated,
  type PasteWritings,
  pasteValue,
  saidBeforeOf,
  saysTheSame,
  type ValueField,
  valueBefore,
} from './paste-value.ts';
import type { PasteCell, PasteColumn, PasteRow } from './views.ts';

export interface ReadRow {
  readonly row: PasteRow;
  readonly edits: readonly Edit[];
}

interface Reading {
  readonly plant: Plant;
  readonly columns: readonly PasteColumn[];
  readonly writings: PasteWritings;
  readonly showing: Showing;
  readonly origin: Origin;
}

const inChain: readonly string[] = ['transducer', 'mount', 'cable', 'cable-length', 'input'];

/**
 * One row of a pasted table. Of a point the plant has, each value that can be taken is taken and the others stay as
 * they are; a new point is made whole or not at all. `named` holds the points of the rows above, and where they stand.
 * `placed` is the point a row goes to by its place, whatever it names; empty where the table has no such point.
 */
export function readRow(
  cells: readonly string[],
  line: number,
  reading: Reading,
  named: Map<string, number>,
  placed: string | undefined,
): ReadRow {
  const { plant, columns } = reading;
  const at = (field: PasteColumn['field']) => columns.findIndex((column) => column.field === field);
  const machine = at('machine') < 0 ? undefined : (cells[at('machine')] ?? '');
  const point = cells[at('point')] ?? '';
  const place = placed === undefined ? pastePlace(plant, machine, point) : placeOf(plant, placed);
  const refusedRow = (words: string, read: readonly PasteCell[] = []): ReadRow => ({
    row: { line, machine: machine ?? '', point, fate: 'refused', refused: words, cells: read },
    edits: [],
  });
  if (cells.length > columns.length) {
    return refusedRow(
      `The row has ${cells.length} cells, and there are ${columns.length} columns. Is a decimal comma read as a sign that parts cells?`,
    );
  }
  if ('refused' in place) return refusedRow(place.refused);
  const of = `${place.machine.name}/${place.name}`;
  const before = named.get(of);
  if (before !== undefined) return refusedRow(`Row ${before} speaks of the same point. Which one holds?`);
  named.set(of, line);
  const read = columns.flatMap((column, index) => {
    const { field, unit } = column;
    if (field === undefined || field === 'machine' || field === 'point') return [];
    return [readCell(field, cells[index] ?? '', unit, place, reading)];
  });
  const whole = wholeChain(read, place);
  const broken = read.find((cell) => cell.refused !== undefined);
  if (place.point === undefined) {
    const words = broken === undefined ? (whole ?? missing(read)) : 'A new point is made whole or not at all.';
    if (words !== undefined) return refusedRow(words, read);
  }
  const kept =
    whole === undefined
      ? read
      : read.map((cell) =>
          cell.taken !== undefined && inChain.includes(cell.field)
            ? { ...cell, taken: undefined, refused: whole }
            : cell,
        );
  const taken = kept.filter((cell) => cell.taken !== undefined);
  const fate =
    place.point === undefined
      ? 'new'
      : taken.length > 0
        ? 'changed'
        : kept.some((cell) => cell.refused !== undefined)
          ? 'refused'
          : 'as it was';
  return {
    row: { line, machine: place.machine.name, point: place.name, fate, refused: undefined, cells: kept },
    edits: editsOf(place, taken, reading.origin),
  };
}

type Found = Exclude<PastePlace, { refused: string }>;

function readCell(
  field: ValueField,
  pasted: string,
  unit: string | undefined,
  place: Found,
  reading: Reading,
): PasteCell {
  const before = valueBefore(field, place.point, reading.showing);
  const said = pasteValue(field, pasted, unit, reading.plant.catalogue, reading.writings);
  const was = saidBeforeOf(field, place.point);
  const cell = {
    field,
    pasted,
    before,
    said: was === undefined ? '' : originWords(was),
    stated: isStated(field),
    taken: undefined,
    refused: undefined,
  };
  if (said.says === 'refused') return { ...cell, refused: said.words };
  if (said.says === 'nothing') return cell;
  const text = said.says === 'unknown' ? 'unknown' : said.text;
  const same = place.point !== undefined && saysTheSame(field, text, place.point, reading.writings.file);
  return same ? cell : { ...cell, taken: text };
}

/** Why the chain a row begins cannot be built; a point that has one already can change any part of it. */
function wholeChain(read: readonly PasteCell[], place: Found): string | undefined {
  const given = read
    .filter((cell) => cell.taken !== undefined && inChain.includes(cell.field))
    .map(({ field }) => field);
  if (place.point?.way !== undefined || given.length === 0) return undefined;
  const lacks = (['cable', 'input'] as const).filter((field) => !given.includes(field));
  return lacks.length === 0
    ? undefined
    : `The point has no chain yet, and a chain begins with a cable and an input. Missing: ${lacks.join(' and ')}.`;
}

function missing(read: readonly PasteCell[]): string | undefined {
  return read.some((cell) => cell.field === 'installation' && cell.taken !== undefined)
    ? undefined
    : "The point is new: a column Installation has to say 'online' or 'portable'.";
}

function editsOf({ machine, name, point }: Found, taken: readonly PasteCell[], origin: Origin): readonly Edit[] {
  const path = ['machines', machine.name, 'points', name];
  const value = (field: ValueField) =>
    entryOf(
      taken.find((cell) => cell.field === field),
      origin,
    );
  const edits = ({ field, taken: text, stated }: PasteCell): readonly Edit[] => {
    const at = [...path, ...(inChain.includes(field) ? ['chain'] : []), field];
    return stated
      ? restatedEdits(at, saidBeforeOf(field as ValueField, point), text!, origin)
      : [{ path: at, yaml: stringify(text).trim() }];
  };
  const begins = taken.some((cell) => inChain.includes(cell.field)) && point?.way === undefined;
  // The reader of files asks for a length; that nobody gave one is said, not hidden.
  const length = begins && value('cable-length') === undefined ? [['cable-length', 'unknown'] as const] : [];
  const chain = [
    ...taken.filter((cell) => inChain.includes(cell.field)).map((cell) => [cell.field, entryOf(cell, origin)] as const),
    ...length,
  ];
  if (point === undefined) {
    const yaml = stringify({
      location: value('location') ?? 'unknown',
      direction: value('direction') ?? 'unknown',
      installation: value('installation'),
      'surface-temperature': value('surface-temperature') ?? 'unknown',
      targets: {},
      ...(chain.length === 0 ? {} : { chain: Object.fromEntries(chain) }),
    });
    return [{ path, yaml: yaml.trimEnd() }];
  }
  if (begins) {
    const own = taken.filter((cell) => !inChain.includes(cell.field));
    return [
      ...own.flatMap((cell) => edits(cell)),
      { path: [...path, 'chain'], yaml: stringify(Object.fromEntries(chain)).trimEnd() },
    ];
  }
  return taken.flatMap((cell) => edits(cell));
}

/** A value as it stands in what is made whole: with its origin where it may have one. */
function entryOf(cell: PasteCell | undefined, { status, source }: Origin): unknown {
  if (cell?.taken === undefined) return undefined;
  if (!cell.stated || cell.taken === 'unknown' || !hasOrigin({ status, source })) return cell.taken;
  return { value: cell.taken, ...(status === '' ? {} : { status }), ...(source === '' ? {} : { source }) };
}
