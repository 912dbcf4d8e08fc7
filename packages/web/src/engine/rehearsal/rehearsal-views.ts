import type { ChainChanges } from '@soundpost/commands/pure';

/** A fault or a defect as it was chosen and its size as it was typed. */
export interface FaultTyped {
  readonly kind: string;
  readonly at: string;
  readonly size: string;
}

export interface DefectTyped {
  readonly kind: string;
  /** The usual one where nothing is typed. */
  readonly size: string;
}

/** The chain beside the chosen one. */
export interface BesideTyped {
  readonly parts: Omit<ChainChanges, 'cableLength'>;
  readonly cableLength: string;
  readonly defects: readonly DefectTyped[];
}

/** What a rehearsal is asked for, as it stands in the form. */
export interface RehearsalTyped {
  readonly of: string;
  readonly seconds: string;
  readonly rate: string;
  readonly seed: string;
  /** `steady:highest`, `run-up:100 r/min:highest`. */
  readonly course: string;
  readonly faults: readonly FaultTyped[];
  readonly defects: readonly DefectTyped[];
  readonly beside: BesideTyped | undefined;
}

export interface KindChoice {
  readonly kind: string;
  readonly name: string;
  /** What its size is. */
  readonly sized: string;
  /** A size as it may be typed. */
  readonly example: string;
}

/** What may be chosen at a point. */
export interface RehearsalChoices {
  readonly of: string;
  readonly name: string;
  readonly machine: string;
  readonly chain: string | undefined;
  /** Faults with the places of this machine they may sit at; those it has no place for are left out. */
  readonly faults: readonly (KindChoice & { readonly places: readonly string[] })[];
  readonly defects: readonly KindChoice[];
  readonly states: readonly string[];
  readonly parts: Readonly<Record<'transducer' | 'mount' | 'cable' | 'input', readonly string[]>>;
}

/** A place on a curve that is named. */
export interface MarkView {
  readonly name: string;
  readonly at: number;
  readonly seen: boolean;
}

/** A curve with its axes, ready to be drawn. */
export interface CurveView {
  readonly title: string;
  readonly across: { readonly unit: string; readonly low: number; readonly high: number; readonly scale: Scale };
  readonly up: { readonly unit: string; readonly low: number; readonly high: number; readonly scale: Scale };
  /** Across and up by turns, in the units of the axes. */
  readonly points: Float32Array;
  readonly marks: readonly MarkView[];
  /** A band that is meant. */
  readonly band?: { readonly low: number; readonly high: number };
}

export type Scale = 'linear' | 'logarithmic';

/** A row of what is seen. */
export interface SeenView {
  readonly name: string;
  readonly where: string;
  readonly shown: string;
  readonly against: string;
  readonly decibels: string;
  readonly verdict: string;
  readonly seen: boolean | undefined;
}

/** What can be heard: samples between −1 and 1. */
export interface HeardView {
  readonly rate: number;
  readonly samples: Float32Array;
}

export interface RehearsedChainView {
  readonly name: string;
  readonly defects: readonly string[];
  /** Why there is no record. */
  readonly unknown: string | undefined;
  readonly curves: readonly CurveView[];
  readonly envelope: string;
  readonly targets: readonly SeenView[];
  readonly lines: readonly SeenView[];
  readonly overall: readonly { readonly what: string; readonly shown: string }[];
  readonly notes: readonly string[];
  readonly heard: HeardView | undefined;
}

export interface RehearsalView {
  readonly speed: string;
  readonly contents: readonly { name: string; by: string; where: string; level: string }[];
  readonly assumed: readonly string[];
  readonly chains: readonly RehearsedChainView[];
  readonly source: HeardView | undefined;
}

export type RehearsalAnswer = { readonly refused: string } | { readonly made: RehearsalView };

export interface FileView {
  readonly name: string;
  readonly content: Uint8Array | string;
}
