export { pageCount } from './page-count.ts';
export { type Paper, papers, pdf } from './pdf.ts';
export { type BookCell, type BookSheet, readWorkbook } from './read-workbook.ts';
export { workbook } from './workbook.ts';
