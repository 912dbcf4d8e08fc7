import type { UnitSystem } from '@soundpost/core';

/** What whoever writes an acceptance file says of it; nothing here is taken from a clock. */
export interface AcceptanceIssue {
  readonly units?: UnitSystem;
  /** The day it is accepted on. */
  readonly acceptedOn?: string;
  /** Content hash of the design: plant file and catalogues, as an issue of it shows it. */
  readonly contentHash: string;
  /** SHA-256 of the records file. */
  readonly recordsHash: string;
  /** All of it as one line of JSON that no markup can end, and its SHA-256. */
  readonly data: string;
  readonly dataHash: string;
}
