import { type Acceptance, Refusal } from '@soundpost/core';
import { acceptanceDocument } from '@soundpost/documents';
import type { Manner } from '../manner.ts';
import { hex } from '../plant/content-hash.ts';
import type { Surroundings } from '../surroundings.ts';

export interface AcceptanceFileRequest {
  readonly accepted: Acceptance;
  /** All of it for scripts; it stands in the file, and its hash is that of the file. */
  readonly json: object;
  /** Of plant file and catalogues, as an issue of the design shows it. */
  readonly contentHash: string;
  readonly records: string;
  readonly out: string;
  readonly date: string | undefined;
  readonly manner: Manner;
}

/** Refuses a name or a day before anything is measured for it. */
export function checkAcceptanceFile(out: string | undefined, date: string | undefined): void {
  if (out !== undefined && !/\.html?$/i.test(out)) {
    throw new Refusal({ read: `--out ${out}`, expected: 'a name that ends in .html' });
  }
  if (date !== undefined && !/^\d{4}-\d\d-\d\d$/.test(date)) {
    throw new Refusal({ read: `--date ${date}`, expected: 'a day as 2026-11-26' });
  }
}

/** Makes the acceptance file and writes it as a whole. */
export async function acceptanceFile(surroundings: Surroundings, request: AcceptanceFileRequest): Promise<void> {
  const { accepted, json, contentHash, records, out, date, manner } = request;
  const recordsHash = await sha256Of(await surroundings.readBytes(records));
  const data = dataLine({ ...json, acceptedOn: date, contentHash, recordsFile: recordsHash });
  const page = acceptanceDocument(accepted, {
    ...(date === undefined ? {} : { acceptedOn: date }),
    ...(manner.showing.units === undefined ? {} : { units: manner.showing.units }),
    contentHash,
    recordsHash,
    data,
    dataHash: await sha256Of(new TextEncoder().encode(data)),
  });
  await surroundings.writeFile(out, page, { overwrite: true });
}

/** One line of JSON in which no sign can end the element it stands in. */
function dataLine(json: object): string {
  return JSON.stringify(json).replace(
    /[<>&\u2028\u2029]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

async function sha256Of(bytes: Uint8Array): Promise<string> {
  return hex(await crypto.subtle.digest('SHA-256', Uint8Array.from(bytes)));
}
