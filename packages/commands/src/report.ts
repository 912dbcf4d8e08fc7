import type { Design } from '@soundpost/core';
import { proofReport } from '@soundpost/documents';
import { type Line, paragraph } from './layout/line.ts';
import type { Manner } from './manner.ts';
import type { Surroundings } from './surroundings.ts';

export interface WrittenReport {
  readonly lines: readonly Line[];
  readonly path: string;
}

/** Writes the proof as a file any browser opens. A report that stands there is replaced: it is made from the plant file. */
export async function writeReport(
  surroundings: Surroundings,
  design: Design,
  path: string,
  { showing, width }: Manner,
): Promise<WrittenReport> {
  surroundings.step(`writing ${path}`);
  const text = proofReport(design, showing.units === undefined ? {} : { units: showing.units });
  await surroundings.writeFile(path, text, { overwrite: true });
  return { lines: paragraph(`Report written to ${path}; any browser opens it.`, width), path };
}
