import { type Design, design as designOf, Refusal } from '@soundpost/core';
import {
  documentRecord,
  type IssuedKind,
  issuedKinds,
  issueFacts,
  type SetTable,
  tablesOf,
} from '@soundpost/documents/document-set';
import { applyEdits } from '@soundpost/files';
import { always, argument, command, switchFlag, textFlag } from './command.ts';
import type { EditedTable } from './import/edited-table.ts';
import { flatHeads } from './import/flat-table.ts';
import { readEdited } from './import/read-edited.ts';
import { type RoundTrip, roundTrips } from './import/round-trip-places.ts';
import { understoodTable } from './import/understood-table.ts';
import { understoodJson } from './json/understood-json.ts';
import { contentHashOf } from './plant/content-hash.ts';
import { readPlant } from './plant/read-plant.ts';
import { plantOf, type StatedTexts, statedTexts } from './plant/stated-texts.ts';
import { seed } from './prove.ts';
import { understoodLines } from './text/understood-text.ts';

export const importTable = command({
  name: 'import',
  summary: 'What a person changed in an exported table, and what the plant file would become',
  description:
    'Reads an instrument list, a cable schedule or an alarm register as `issue` writes them, edited in a spreadsheet, and ' +
    'says cell by cell what was understood: what becomes of the plant file, what is refused and why, and where the plant ' +
    'has changed since the export. A workbook carries what was exported; of a text say with --exported which issue it ' +
    'comes from, otherwise it is compared with the plant as it is. Nothing is written without --apply, and nothing in ' +
    'conflict is written at all. Ends with 1 where a cell is refused or in conflict.',
  arguments: {
    plant: argument('PLANT', 'A plant file'),
    table: argument('FILE', 'The edited table: a workbook (XLSX) or a text with commas, semicolons or tabs (CSV)'),
  },
  flags: {
    exported: textFlag('ISSUE', 'The folder of the issue, or the plant file, that a text was exported from'),
    apply: switchFlag('Write what was understood into the plant file'),
  },
  examples: [
    'soundpost import examples/raw-water-pump/plant.yaml alarm-register.xlsx',
    'soundpost import examples/raw-water-pump/plant.yaml cables.csv --exported out/documents/revision-A --apply',
  ],
  whenAllowed: always,
  perform: async (surroundings, { plant: path, table: file, exported, apply }, manner) => {
    const texts = await statedTexts(surroundings, path);
    const { plant, writing } = await readPlant(surroundings, path);
    const before = exported === undefined ? undefined : plantOf(await statedTexts(surroundings, exported));
    const design = designOf(plant, seed);
    const old = before === undefined ? undefined : designOf(before, seed);
    const { tables, exportedIn } = await readEdited(surroundings, file);
    const { table, roundTrip, units } = recognised(tables, design, file);
    const issued = old === undefined ? undefined : tableOf(roundTrip, old, units);
    const understood = understoodTable(table, {
      design,
      roundTrip,
      now: tableOf(roundTrip, design, units)!,
      text: texts.plant,
      file: writing.decimal,
      read: manner.showing.decimal,
      ...(issued === undefined ? {} : { exported: issued }),
    });
    const edits = understood.cells.flatMap((each) => (each.edit === undefined ? [] : [each.edit]));
    const next = applyEdits(texts.plant, edits).text;
    // Whether the plant can still be read is asked before anything is written.
    plantOf({ ...texts, plant: next });
    const contentHash = await contentHashOf(bytesOf(texts));
    const imported = {
      plant: path,
      table: file,
      ...(exportedIn === undefined
        ? {}
        : { exportedIn: { ...exportedIn, plantAsThen: exportedIn.contentHash === contentHash } }),
    };
    const written = apply && edits.length > 0;
    if (written && (await statedTexts(surroundings, path)).plant !== texts.plant) {
      throw new Refusal({
        read: `${path}, changed while it was looked at`,
        expected: 'a plant file that stands still',
      });
    }
    if (written) await surroundings.writeFile(path, next, { overwrite: true });
    return {
      exit: understood.cells.some((each) => each.is === 'refused' || each.is === 'conflict') ? 1 : 0,
      lines: understoodLines(understood, { ...imported, written }, manner),
      json: understoodJson(understood, { ...imported, written }),
    };
  },
});

/** The plant file, then its catalogues, as an issue hashes them. */
function bytesOf({ plant, catalogues }: StatedTexts): readonly Uint8Array[] {
  return [plant, ...catalogues.values()].map((text) => new TextEncoder().encode(text));
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
  if (best !== undefined) return best;
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
