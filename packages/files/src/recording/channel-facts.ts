import {
  type Answer,
  answer,
  type ChannelStatement,
  type Coupling,
  type Finding,
  finding,
  parseQuantity,
  type QuantityName,
  quantities,
  type RecordedChannel,
  type RecordedUnit,
  Refusal,
  type StatedChannel,
  type StatedRecording,
  said,
  sameDimension,
  type ToldFact,
  unanswered,
  type Writing,
} from '@soundpost/core';
import { recordedUnit } from './recorded-unit.ts';

/** What is known of a channel once the recording and the records file have both spoken, and where they disagree. */
export interface ChannelFacts {
  readonly rate: Answer<number>;
  readonly statement: ChannelStatement;
  readonly findings: readonly Finding[];
  /** Every fact with who says it. */
  readonly told: readonly ToldFact[];
}

/** Taken where neither the recording nor the records file says it. */
export interface FallbackAnswers {
  /** Samples a second. */
  readonly rate?: number;
  readonly unit?: string;
}

interface Said {
  readonly written: string;
  readonly value: number;
}

/** Two numbers say the same within this. */
const same = 1e-3;

/**
 * Facts of the recording with the answers of the records file. Where both speak they must agree: if not, the fact is
 * unknown and a finding says both, since a wrong rate or sensitivity would be believed silently otherwise.
 */
export function channelFacts(
  channel: RecordedChannel,
  recording: StatedRecording,
  stated: StatedChannel,
  writing: Writing,
  fallback: FallbackAnswers = {},
): ChannelFacts {
  const at = `${recording.name} / ${stated.name}`;
  const findings: Finding[] = [];
  const { values } = stated.answers;
  const { unit, told: toldUnit } = unitOf(at, channel, stated, fallback.unit, findings);
  const told: ToldFact[] = [];
  const settled = (what: string, ofFile: Said | undefined, answered: Said | undefined): Answer<number> => {
    told.push(toldFact(what, ofFile?.written, answered?.written, differ(ofFile?.value, answered?.value)));
    if (differ(ofFile?.value, answered?.value)) {
      findings.push(disagreement(at, what, ofFile!.written, answered!.written));
      return unanswered([{ of: at, what: `${what}: recording and records file differ` }]);
    }
    const value = ofFile ?? answered;
    return value === undefined ? unanswered([{ of: at, what }]) : answer(value.value);
  };
  const number = (entry: { readonly known: boolean } | undefined): Said | undefined => {
    const known = entry as { known: boolean; value?: unknown; written?: string } | undefined;
    return known?.known === true
      ? { written: known.written || String(known.value), value: Number(known.value) }
      : undefined;
  };
  const text = (entry: { readonly known: boolean } | undefined): string | undefined => {
    const known = entry as { known: boolean; value?: unknown } | undefined;
    return known?.known === true ? String(known.value) : undefined;
  };
  const rate = settled('sampling rate', number(channel.rate), number(recording.answers.values.rate));
  const ownRate = told[0]!;
  if (ownRate.by === 'nobody' && fallback.rate !== undefined) {
    told[0] = { ...ownRate, written: `${fallback.rate} Hz`, by: 'the command line' };
  }
  const facts = {
    rate: told[0]!.by === 'the command line' ? answer(fallback.rate!) : rate,
    statement: {
      unit,
      sensitivity: settled(
        'sensitivity told to the recorder',
        sensitivityIn(text(channel.sensitivity), writing),
        sensitivityIn(text(values.sensitivity), writing),
      ),
      gain: settled('gain', gainIn(text(channel.gain)), number(values.gain)),
      coupling: couplingOf(at, text(channel.coupling), text(values.coupling), findings),
      speed: settled('speed of the shaft', speedIn(text(channel.speed), writing), number(values.speed)),
    },
    findings,
  };
  const [heard, answered] = [text(channel.coupling), text(values.coupling)].map((each) =>
    each === undefined ? undefined : couplingIn(each),
  );
  return {
    ...facts,
    told: [
      toldUnit,
      toldFact('coupling', heard, answered, heard !== undefined && answered !== undefined && heard !== answered),
      ...told,
    ],
  };
}

function differ(ofFile: number | undefined, answered: number | undefined): boolean {
  return ofFile !== undefined && answered !== undefined && Math.abs(answered / ofFile - 1) > same;
}

function toldFact(
  fact: string,
  ofFile: string | undefined,
  answered: string | undefined,
  differing: boolean,
): ToldFact {
  if (ofFile === undefined && answered === undefined) return { fact, written: '', by: 'nobody' };
  if (differing) return { fact, written: `${ofFile}; ${answered}`, by: 'they differ' };
  const by = ofFile === undefined ? 'the records file' : answered === undefined ? 'the recording' : 'both';
  return { fact, written: (ofFile ?? answered)!.slice(0, 60), by };
}

/** The unit of the file; the answer where it has none, or where its numbers are shares of full scale. */
function unitOf(
  at: string,
  channel: RecordedChannel,
  stated: StatedChannel,
  fallback: string | undefined,
  findings: Finding[],
): { readonly unit: Answer<RecordedUnit>; readonly told: ToldFact } {
  const { unit, fullScale } = stated.answers.values;
  const ofFile = channel.unit.known ? channel.unit.value : undefined;
  if (fullScale?.known === true) {
    const { quantity, value } = fullScale.value;
    const { dimension } = quantities[quantity];
    return {
      unit: answer({ written: fullScale.written, factor: value, dimension, quantity }),
      told: toldFact('unit', undefined, `full scale ${fullScale.written}`, false),
    };
  }
  const heard = unit?.known === true ? recordedUnit(unit.value).unit : undefined;
  const answered = heard?.known === true ? heard.value : undefined;
  const differing = ofFile !== undefined && answered !== undefined && !sameUnit(ofFile, answered);
  const told = toldFact('unit', ofFile?.written, answered?.written, differing);
  if (differing) {
    findings.push(disagreement(at, 'unit', ofFile.written, answered.written));
    return { unit: unanswered([{ of: at, what: 'unit: recording and records file differ' }]), told };
  }
  const value = ofFile ?? answered;
  const last = value === undefined && fallback !== undefined ? recordedUnit(fallback).unit : undefined;
  if (last?.known === true) {
    return { unit: answer(last.value), told: { fact: 'unit', written: fallback!, by: 'the command line' } };
  }
  const what =
    unit?.known === true ? `unit of its numbers ('${unit.value}' is none that is known)` : 'unit of its numbers';
  return { unit: value === undefined ? unanswered([{ of: at, what }]) : answer(value), told };
}

function sameUnit(a: RecordedUnit, b: RecordedUnit): boolean {
  return sameDimension(a.dimension, b.dimension) && Math.abs(a.factor / b.factor - 1) < 1e-9 && a.offset === b.offset;
}

const perMotion: readonly QuantityName[] = [
  'voltage per acceleration',
  'voltage per velocity',
  'voltage per displacement',
];

/** V per SI motion; nothing where the text is no sensitivity in voltage. */
function sensitivityIn(text: string | undefined, writing: Writing): Said | undefined {
  if (text === undefined) return undefined;
  for (const quantity of perMotion) {
    const value = readOrNothing(text, quantity, writing);
    if (value !== undefined) return { written: text, value };
  }
  return undefined;
}

function speedIn(text: string | undefined, writing: Writing): Said | undefined {
  const value = text === undefined ? undefined : readOrNothing(text, 'shaft speed', writing);
  return value === undefined ? undefined : { written: text!, value };
}

function readOrNothing(text: string, quantity: QuantityName, writing: Writing): number | undefined {
  try {
    return parseQuantity(text, quantity, writing);
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}

/** `10`, `x10`, `20 dB`. */
function gainIn(text: string | undefined): Said | undefined {
  const found = /^\s*(?:[x×]\s*)?(\d+(?:\.\d+)?)\s*(dB)?\s*$/i.exec(text ?? '');
  if (found === null) return undefined;
  const number = Number(found[1]);
  return { written: text!, value: found[2] === undefined ? number : 10 ** (number / 20) };
}

function couplingOf(
  at: string,
  ofFile: string | undefined,
  answered: string | undefined,
  findings: Finding[],
): Answer<Coupling> {
  const heard = ofFile === undefined ? undefined : couplingIn(ofFile);
  const told = answered === undefined ? undefined : couplingIn(answered);
  if (heard !== undefined && told !== undefined && heard !== told) {
    findings.push(disagreement(at, 'coupling', ofFile!, answered!));
    return unanswered([{ of: at, what: 'coupling: recording and records file differ' }]);
  }
  const value = heard ?? told;
  return value === undefined ? unanswered([{ of: at, what: 'coupling' }]) : answer(value);
}

function couplingIn(text: string): Coupling | undefined {
  if (/^\s*(dc|direct)/i.test(text)) return 'direct';
  return /^\s*(ac|alternating|iepe)/i.test(text) ? 'alternating' : undefined;
}

function disagreement(at: string, what: string, ofFile: string, answered: string): Finding {
  return finding({
    rule: 'recording/answer-differs',
    weight: 'question',
    at,
    found: said`the recording says '${ofFile.slice(0, 60)}', the records file '${answered.slice(0, 60)}'`,
    limit: `one ${what}`,
    because: 'Whichever is wrong, everything measured from it is wrong by the same factor.',
    remedy: ['read it off the recorder again', 'correct the records file, or leave the answer out'],
    sources: [],
    asks: `Which ${what} is right?`,
  });
}
