import { type Design, design as designOf, Refusal } from '@soundpost/core';
import {
  documentRecord,
  type IssuedKind,
  issuedKinds,
  issueFacts,
  type SetTable,
  tablesOf,
} from '@soundpost/documents/document-set';
import { applyEdits, type Edit } from '@soundpost/files';
import { contentHashOf } from '../plant/content-hash.ts';
import { plantOf, type StatedTexts, writingOf } from '../plant/stated-texts.ts';
import { seed } from '../seed.ts';
import type { EditedTable } from './edited-table.ts';
import { flatHeads } from './flat-table.ts';
import type { EditedFile } from './read-edited.ts';
import { type RoundTrip, roundTrips } from './round-trip-places.ts';
import { type UnderstoodTable, understoodTable } from './understood-table.ts';

/** What an edited table would make of a plant file; nothing is changed. */
export interface Understanding {
  readonly understood: UnderstoodTable;
  readonly edits: readonly Edit[];
  /** The plant file with the edits made; it is known that it can be read. */
  readonly text: string;
  /** Other tabs of the workbook that hold something; nothing is read from them. */
  readonly tabsNotRead: readonly string[];
  readonly exportedIn?: { readonly revision: string; readonly contentHash: string; readonly plantAsThen: boolean };
}

export interface HandedIn {
  /** As its reader calls it. */
  readonly file: string;
  readonly edited: EditedFile;
  /** How a table of texts writes numbers. */
  readonly decimal: 'point' | 'comma' | undefined;
  /** What a text was exported from, where somebody said so. */
  readonly exportedFrom?: StatedTexts;
  /** Whether the table holds where both it and the plant were changed since the export. */
  readonly overrules?: boolean;
}

/** Throws Refusal where no table is known, and UnreadableFile where the plant could not be read any more. */
export async function understanding(texts: StatedTexts, handedIn: HandedIn): Promise<Understanding> {
  const { file, edited, decimal, exportedFrom, overrules = false } = handedIn;
  const design = designOf(plantOf(texts), seed);
  const { table, roundTrip, units } = recognised(edited.tables, design, file);
  const issued =
    exportedFrom === undefined ? undefined : tableOf(roundTrip, designOf(plantOf(exportedFrom), seed), units);
  const understood = understoodTable(table, {
    design,
    roundTrip,
    now: tableOf(roundTrip, design, units)!,
    text: texts.plant,
    file: writingOf(texts).decimal,
    read: decimal,
    ...(issued === undefined ? {} : { exported: issued }),
  });
  const taken = understood.cells.filter((each) => each.is === 'change' || (overrules && each.is === 'conflict'));
  const edits = taken.flatMap((each) => (each.edit === undefined ? [] : [each.edit]));
  const { text } = applyEdits(texts.plant, edits);
  plantOf({ ...texts, plant: text });
  const { exportedIn } = edited;
  return {
    understood,
    edits,
    text,
    tabsNotRead: edited.tables
      .filter((each) => each !== table && each.rows.length > 0 && !isAboutTheIssue(each))
      .map((each) => each.name),
    ...(exportedIn === undefined
      ? {}
      : {
          exportedIn: { ...exportedIn, plantAsThen: exportedIn.contentHash === (await contentHashOf(bytesOf(texts))) },
        }),
  };
}

/** The plant file, then its catalogues, as an issue hashes them. */
export function bytesOf({ plant, catalogues }: StatedTexts): readonly Uint8Array[] {
  return [plant, ...catalogues.values()].map((text) => new TextEncoder().encode(text));
}

/** The last tab of an exported workbook, which says of which issue it is. */
function isAboutTheIssue({ head, rows }: EditedTable): boolean {
  return head[0] === 'Document' && rows.some(({ cells }) => cells[0]?.text === 'Content hash');
}

type Units = 'metric' | 'us';

interface Recognised {
  readonly table: EditedTable;
  readonly roundTrip: RoundTrip;
  readonly units: Units;
}

/** Which tab is which table, by its heads; in which units it was exported, by the heads and cells that are as they were. */
function recognised(edited: readonly EditedTable[], design: Design, file: string): Recognised {
  const candidates = edited.flatMap((table) =>
    roundTrips.flatMap((roundTrip) =>
      (['metric', 'us'] as const).flatMap((units) => {
        const made = tableOf(roundTrip, design, units);
        if (made === undefined || !roundTrip.names.every((name) => table.head.includes(name))) return [];
        const heads = flatHeads(made).filter((head) => table.head.includes(head)).length;
        return [{ table, roundTrip, units, fit: heads + cellsAlike(table, made), heads, of: flatHeads(made).length }];
      }),
    ),
  );
  const best = candidates.filter((each) => 2 * each.heads >= each.of).sort((a, b) => b.fit - a.fit)[0];
  if (best !== undefined) {
    const { head } = best.table;
    const twice = head.find((each, at) => each !== '' && head.indexOf(each) !== at);
    if (twice === undefined) return best;
    throw new Refusal({
      read: `${file}, in which the head '${twice}' stands twice`,
      expected: 'each head once',
      suggestion: 'Keep the column that holds, and take the other one out.',
    });
  }
  throw new Refusal({
    read: `${file}, in which no table is known by its heads`,
    expected: `an exported table with its heads: ${roundTrips.map((each) => each.kind).join(', ')}`,
    suggestion: 'Keep the first row as it was exported.',
  });
}

function cellsAlike(table: EditedTable, made: SetTable): number {
  const said = new Set(made.rows.flat().flatMap((cell) => (cell.is === 'text' ? [cell.text] : [])));
  return table.rows.flatMap(({ cells }) => cells).filter((cell) => said.has(cell.text)).length / 1e6;
}

function tableOf({ kind }: RoundTrip, design: Design, units: Units): SetTable | undefined {
  const issued: IssuedKind = issuedKinds.find((each) => each.kind === kind)!;
  const record = documentRecord(issued, design, issueFacts(design, { contentHash: '' }), { units });
  return record === undefined ? undefined : tablesOf(record)[0];
}
