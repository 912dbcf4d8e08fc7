import type { CheckVerdict } from '@soundpost/core';
import type { FindingView } from '../views.ts';

/** A channel of a chosen recording: what its file says, and what it leaves open. */
export interface ChannelFound {
  readonly number: number;
  readonly name: string;
  readonly says: string;
  readonly asks: readonly Asked[];
}

export type Asked = 'rate' | 'unit' | 'gain' | 'coupling';

/** A chosen file as far as its head tells. */
export interface FileFound {
  readonly name: string;
  readonly is: 'recording' | 'records file' | 'facts' | 'refused';
  readonly words: string;
  readonly channels: readonly ChannelFound[];
}

export interface OccasionChoice {
  readonly kind: string;
  readonly name: string;
  readonly how: string;
  readonly fields: readonly {
    readonly key: string;
    readonly meaning: string;
    readonly example: string;
    readonly options: readonly string[];
    readonly optional: boolean;
  }[];
}

export interface AcceptanceChoices {
  readonly points: readonly string[];
  readonly occasions: readonly OccasionChoice[];
}

/** What somebody at the machine says of a recording, as typed. */
export interface RecordingTyped {
  readonly file: string;
  readonly occasion: string;
  readonly fields: Readonly<Record<string, string>>;
  readonly rate: string;
  readonly channels: readonly ChannelTyped[];
}

export interface ChannelTyped {
  readonly number: number;
  readonly point: string;
  readonly unit: string;
  readonly gain: string;
  readonly coupling: string;
  readonly sensitivity: string;
  readonly speed: string;
}

export interface CheckView {
  readonly title: string;
  readonly record: string;
  readonly verdict: CheckVerdict;
  readonly expected: string;
  readonly tolerance: string;
  readonly found: string;
  readonly because: string;
  readonly causes: readonly { readonly cause: string; readonly evidence: string; readonly next: string }[];
  readonly needs: readonly string[];
}

export interface AcceptanceView {
  readonly recordings: readonly { readonly name: string; readonly words: string; readonly refused: boolean }[];
  readonly points: readonly {
    readonly at: string;
    readonly verdict: CheckVerdict;
    readonly counts: string;
    readonly checks: readonly CheckView[];
  }[];
  readonly strangers: readonly string[];
  readonly findings: readonly FindingView[];
  readonly questions: readonly string[];
  readonly unproven: readonly { readonly at: string; readonly checks: string; readonly needs: string }[];
  readonly ways: readonly { readonly name: string; readonly how: string }[];
  readonly identified: readonly {
    readonly at: string;
    readonly title: string;
    readonly found: string;
    readonly interval: string;
    readonly designed: string;
    readonly standing: string;
  }[];
  readonly handedBack: readonly {
    readonly at: string;
    readonly before: string;
    readonly after: string;
    readonly margins: string;
    readonly turned: readonly string[];
  }[];
  /** The acceptance file, and the records file it is made from. */
  readonly page: string;
  readonly records: string;
}

export type AcceptanceAnswer = { readonly refused: string } | { readonly accepted: AcceptanceView };
