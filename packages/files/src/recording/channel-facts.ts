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
  unanswered,
  type Writing,
} from '@soundpost/core';
import { recordedUnit } from './recorded-unit.ts';

/** What is known of a channel once the recording and the records file have both spoken, and where they disagree. */
export interface ChannelFacts {
  readonly rate: Answer<number>;
  readonly statement: ChannelStatement;
  readonly findings: readonly Finding[];
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
): ChannelFacts {
  const at = `${recording.name} / ${stated.name}`;
  const findings: Finding[] = [];
  const { values } = stated.answers;
  const unit = unitOf(channel, stated);
  const settled = (what: string, ofFile: Said | undefined, answered: Said | undefined): Answer<number> => {
    if (ofFile !== undefined && answered !== undefined && Math.abs(answered.value / ofFile.value - 1) > same) {
      findings.push(disagreement(at, what, ofFile.written, answered.written));
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
  return {
    rate: settled('sampling rate', number(channel.rate), number(recording.answers.values.rate)),
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
}

/** The unit of the file; the answer where it has none, or where its numbers are shares of full scale. */
function unitOf(channel: RecordedChannel, stated: StatedChannel): Answer<RecordedUnit> {
  const { unit, fullScale } = stated.answers.values;
  if (fullScale?.known === true) {
    const { quantity, value } = fullScale.value;
    return answer({ written: fullScale.written, factor: value, dimension: quantities[quantity].dimension, quantity });
  }
  if (channel.unit.known) return answer(channel.unit.value);
  const heard = unit?.known === true ? recordedUnit(unit.value).unit : undefined;
  if (heard?.known === true) return answer(heard.value);
  return unanswered([{ of: `${stated.name}`, what: 'unit of its numbers' }]);
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
