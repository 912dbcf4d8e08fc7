import { always, argument, command, switchFlag, textFlag } from './command.ts';
import { readEdited } from './import/read-edited.ts';
import { understanding } from './import/understanding.ts';
import { understoodJson } from './json/understood-json.ts';
import { statedTexts } from './plant/stated-texts.ts';
import { understoodLines } from './text/understood-text.ts';

export const importTable = command({
  name: 'import',
  summary: 'What a person changed in an exported table, and what the plant file would become',
  description:
    'Reads an instrument list, a cable schedule or an alarm register as `issue` writes them, edited in a spreadsheet, and ' +
    'says cell by cell what was understood: what becomes of the plant file, what is refused and why, and where the plant ' +
    'has changed since the export. A workbook carries what was exported; of a text say with --exported which issue it ' +
    'comes from, otherwise it is compared with the plant as it is. Nothing is written without --apply, and nothing in ' +
    'conflict without --overrule. Ends with 1 where a cell is refused or in conflict.',
  arguments: {
    plant: argument('PLANT', 'A plant file'),
    table: argument('FILE', 'The edited table: a workbook (XLSX) or a text with commas, semicolons or tabs (CSV)'),
  },
  flags: {
    exported: textFlag('ISSUE', 'The folder of the issue, or the plant file, that a text was exported from'),
    apply: switchFlag('Write what was understood into the plant file'),
    overrule: switchFlag('Where both the table and the plant were changed since the export, the table holds'),
  },
  examples: [
    'soundpost import examples/raw-water-pump/plant.yaml alarm-register.xlsx',
    'soundpost import examples/raw-water-pump/plant.yaml cables.csv --exported out/documents/revision-A --apply',
  ],
  whenAllowed: always,
  perform: async (surroundings, { plant: path, table: file, exported, apply, overrule }, manner) => {
    const texts = await statedTexts(surroundings, path);
    const exportedFrom = exported === undefined ? undefined : await statedTexts(surroundings, exported);
    const { understood, edits, text, exportedIn, tabsNotRead } = await understanding(texts, {
      file,
      edited: await readEdited(await surroundings.readBytes(file), file),
      decimal: manner.showing.decimal,
      overrules: overrule,
      ...(exportedFrom === undefined ? {} : { exportedFrom }),
    });
    const imported = {
      plant: path,
      table: file,
      tabsNotRead,
      overrules: overrule,
      ...(exportedIn === undefined ? {} : { exportedIn }),
    };
    const written = apply && edits.length > 0;
    const from = new TextEncoder().encode(texts.plant);
    if (written) await surroundings.writeFile(path, text, { overwrite: true, from });
    return {
      exit: understood.cells.some((each) => each.is === 'refused' || (each.is === 'conflict' && !overrule)) ? 1 : 0,
      lines: understoodLines(understood, { ...imported, written }, manner),
      json: understoodJson(understood, { ...imported, written }),
    };
  },
});
