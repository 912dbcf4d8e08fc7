export { type Paper, papers, pdf } from './pdf.ts';
export { workbook } from './workbook.ts';
