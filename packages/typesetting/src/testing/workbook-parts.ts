import { unzipSync, zipSync } from 'fflate';

/** The parts of a workbook by their paths, as an attacker would take them out and put others in. */
export type WorkbookParts = Record<string, Uint8Array>;

export function workbookParts(bytes: Uint8Array): WorkbookParts {
  return unzipSync(bytes);
}

export function workbookOfParts(parts: WorkbookParts): Uint8Array {
  return zipSync(parts);
}
