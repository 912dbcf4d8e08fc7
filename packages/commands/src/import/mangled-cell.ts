import { alike } from './flat-table.ts';

const month = '(?:Jan|Feb|Mar|Mär|Apr|May|Mai|Jun|Jul|Aug|Sep|Oct|Okt|Nov|Dec|Dez)[a-zä]*';
const date = new RegExp(
  [
    `\\d{1,2}[-./ ]+${month}(?:[-./ ]+\\d{2,4})?`,
    `${month}[-./ ]+\\d{1,4}`,
    '\\d{1,2}/\\d{1,2}/\\d{2,4}',
    '\\d{1,2}\\.\\d{1,2}\\.\\d{2,4}',
    '\\d{4}-\\d{2}-\\d{2}(?:[ T]\\d{1,2}:\\d{2}.*)?',
  ]
    .map((each) => `^${each}$`)
    .join('|'),
  'i',
);

/**
 * Why nothing may be taken from a cell that a spreadsheet seems to have rewritten by itself: `4-20` becomes a date, `007`
 * becomes 7. Undefined where it does not look so. How spreadsheets write dates: common practice, no source.
 */
export function mangledBySpreadsheet(edited: string, was: string, isText: boolean): string | undefined {
  if (date.test(edited) && !date.test(was)) {
    return `It reads as a date; a spreadsheet makes one of what looks like it, such as 4-20. ${asText}`;
  }
  if (isText && alike(edited, was)) {
    return `The spreadsheet took it for a number and wrote it its own way, perhaps without its leading zeros. ${asText}`;
  }
  return undefined;
}

const asText = 'Format the cell as text, and type it again.';
