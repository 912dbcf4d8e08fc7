import type { Design, UnitSystem } from '@soundpost/core';
import * as documents from '@soundpost/documents';
import { type Line, paragraph } from './layout/line.ts';
import type { Manner } from './manner.ts';
import type { Surroundings } from './surroundings.ts';

export interface WrittenReport {
  readonly lines: readonly Line[];
  readonly path: string | null;
}

/** The proof as a document; a build without documents has none, and says so. */
const { proofReport } = documents as {
  readonly proofReport?: (design: Design, options: { readonly units?: UnitSystem }) => string;
};

/** Writes the proof as a file any browser opens. A report that stands there is replaced: it is made from the plant file. */
export async function writeReport(
  surroundings: Surroundings,
  design: Design,
  path: string,
  { showing, width }: Manner,
): Promise<WrittenReport> {
  if (proofReport === undefined) {
    return { lines: paragraph('No report was written: this build holds no report document.', width), path: null };
  }
  surroundings.step(`writing ${path}`);
  const text = proofReport(design, showing.units === undefined ? {} : { units: showing.units });
  await surroundings.writeFile(path, text, { overwrite: true });
  return { lines: paragraph(`Report written to ${path}; any browser opens it.`, width), path };
}
