import type { UnderstoodCell, UnderstoodTable } from '../import/understood-table.ts';
import { blank, grave, heading, type Line, paragraph } from '../layout/line.ts';
import type { Manner } from '../manner.ts';
import { capital, counted } from './values-text.ts';

/** Which files it was about, and whether the plant file was written. */
export interface Imported {
  readonly plant: string;
  readonly table: string;
  /** Which issue it was exported in, and whether the plant and its catalogues are still as they were then. */
  readonly exportedIn?: { readonly revision: string; readonly contentHash: string; readonly plantAsThen: boolean };
  readonly tabsNotRead: readonly string[];
  /** Whether the table holds where both were changed. */
  readonly overrules: boolean;
  readonly written: boolean;
}

export function understoodLines(understood: UnderstoodTable, imported: Imported, { width }: Manner): readonly Line[] {
  const { kind, carriesExported, cells } = understood;
  const section = (title: string, is: UnderstoodCell['is'], gravely = false): readonly Line[] => {
    const here = cells.filter((each) => each.is === is);
    if (here.length === 0) return [];
    return [
      blank,
      ...(gravely ? grave(title, width) : heading(title, width)),
      ...here.flatMap((each) => paragraph(`  ${cellSentence(each)}`, width, '      ')),
    ];
  };
  const count = (is: UnderstoodCell['is']) => cells.filter((each) => each.is === is).length;
  const done = imported.written
    ? 'Written into the plant file'
    : 'Nothing is written; --apply writes what is understood';
  return [
    ...heading(`Read as ${kind}: ${imported.table} for ${imported.plant}`, width),
    ...exportedLines(imported, width),
    ...(carriesExported
      ? []
      : paragraph(
          'The file does not carry what was exported. It is compared with the plant as it is now, so what the plant changed since looks like an edit; say --exported to tell them apart.',
          width,
        )),
    ...(cells.length === 0 ? paragraph('No cell was edited.', width) : []),
    ...section('Understood', 'change'),
    ...section(
      `Changed in the plant since the export: ${imported.overrules ? 'overruled' : 'not taken'}`,
      'conflict',
      true,
    ),
    ...section('Refused', 'refused', true),
    ...section('The plant says so already', 'as the plant has it'),
    ...unread(understood, imported).flatMap((words) => [blank, ...paragraph(words, width)]),
    blank,
    ...paragraph(
      `${capital(counted(count('change'), 'change'))} understood, ${count('conflict')} in conflict, ${count('refused')} refused. ${done}.`,
      width,
    ),
  ];
}

/** What the file does not have of the table, and what it has that is not of the table. */
function unread(
  { rowsMissing, headsUnknown, headsMissing }: UnderstoodTable,
  { tabsNotRead }: Imported,
): readonly string[] {
  const sentences: readonly (readonly [string, readonly string[]])[] = [
    ['Rows that are not in the file, and stay in the plant', rowsMissing],
    ['Columns that are not in the file, and stay as they are', headsMissing],
    ['Columns that are not of this table, and are not read', headsUnknown],
    ['Other tabs, from which nothing is read', tabsNotRead],
  ];
  return sentences.filter(([, list]) => list.length > 0).map(([words, list]) => `${words}: ${list.join('; ')}.`);
}

function cellSentence({ cell, column, of, path, exported, now, edited, is, words }: UnderstoodCell): string {
  const where = path === undefined ? '' : `; ${path.join('/')}`;
  const shown = (text: string | undefined) => (text === undefined || text === '' ? 'nothing' : `'${text}'`);
  const what =
    is === 'conflict'
      ? `exported ${shown(exported)}, edited to ${shown(edited)}, now ${shown(now)}`
      : `${exported === undefined ? '' : `${shown(exported)} → `}${shown(edited)}`;
  return `${cell} ${column} of ${of}: ${what}${where}.${words === undefined ? '' : ` ${words}`}`;
}

function exportedLines({ exportedIn }: Imported, width: number): readonly Line[] {
  if (exportedIn === undefined) return [];
  const { revision, contentHash, plantAsThen } = exportedIn;
  const since = plantAsThen ? 'is as it was then' : 'has changed since';
  return paragraph(`Exported in revision ${revision}, content ${contentHash.slice(0, 12)}; the plant ${since}.`, width);
}
