import type { Design } from '../design/design.ts';
import type { Finding } from '../finding/finding.ts';
import type { Missing } from '../quantity/index.ts';
import { type Comparison, comparison } from './comparison.ts';
import { type HandedBack, handedBack } from './handed-back.ts';
import { type Identified, identifiedChains } from './identify/identified.ts';
import type { MeasuredRecord, RecordedChannelFacts, ServingChannel } from './measured-record.ts';
import type { Picture } from './picture/picture.ts';
import { pictures } from './picture/pictures.ts';
import type { Session } from './session.ts';

/** A recording of an acceptance: its file, what identifies it, what it is, or why it could not be read. */
export interface AcceptedRecording {
  readonly name: string;
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
  /** In words: `WAV, integers of 24 bits`. */
  readonly form?: string;
  /** Date and time as written. */
  readonly start?: string;
  readonly channels: readonly RecordedChannelFacts[];
  readonly refused?: string;
}

/** Everything that was recorded, read and measured for an acceptance. */
export interface Recorded {
  readonly session: Session;
  readonly recordings: readonly AcceptedRecording[];
  readonly records: readonly MeasuredRecord[];
  readonly serving: readonly ServingChannel[];
  /** What the recordings contradict: head, data and stated facts. */
  readonly findings: readonly Finding[];
  /** What nobody says. */
  readonly questions: readonly Missing[];
}

/** The one record between recordings and design, and every text, document and screen that speaks of them. */
export interface Acceptance extends Omit<Recorded, 'records' | 'serving'> {
  readonly design: Design;
  readonly compared: Comparison;
  readonly identified: readonly Identified[];
  readonly handedBack: HandedBack;
  readonly pictures: readonly Picture[];
}

/** What recordings say of the installed chains of a design; `seed` repeats the trials of the design. */
export function acceptance(design: Design, recorded: Recorded, seed: number): Acceptance {
  const { records, serving, ...rest } = recorded;
  const beside = { readings: recorded.session.readings, serving };
  const sound = records.filter(({ doubts = [] }) => doubts.length === 0);
  const identified = identifiedChains(design, sound, beside).filter(isTold);
  return {
    ...rest,
    design,
    compared: comparison(design, records, beside),
    identified,
    handedBack: handedBack(design, identified.filter(hasPlace), seed),
    pictures: pictures(design, records, beside),
  };
}

function isTold({ value, interval }: Identified): boolean {
  return [value, interval.low, interval.high].every(Number.isFinite);
}

/** A gain, a resonance or a noise of nothing takes the place of no prediction: the record showed none. */
function hasPlace({ value, facts }: Identified): boolean {
  return facts === undefined || value > 0;
}
