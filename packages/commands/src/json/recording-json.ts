import { questionsOf, type RecordedChannel, type Stated } from '@soundpost/core';
import type { ChannelSurvey, Survey } from '@soundpost/files';
import { findingJson } from './finding-json.ts';
import { missingJson, quantityJson } from './values-json.ts';

/** A recording for scripts; described in docs/json.md. */
export function recordingJson({ recording, channels }: Survey): object {
  return {
    form: recording.form,
    start: said(recording.start, 'recording', 'start'),
    channels: recording.channels.map((channel, index) => channelJson(channel, channels[index]!)),
    remarks: recording.remarks,
    questions: questionsOf(recording),
    findings: recording.findings.map(findingJson),
  };
}

function channelJson(channel: RecordedChannel, survey: ChannelSurvey): object {
  const { of, rate, unit } = channel;
  const fact = (name: 'name' | 'sensitivity' | 'gain' | 'coupling' | 'speed') => said(channel[name], of, name);
  return {
    of,
    name: fact('name'),
    rate: rate.known ? quantityJson('frequency', rate.value) : missingJson([{ of, what: 'rate' }]),
    unit: unit.known
      ? {
          written: unit.value.written,
          factor: unit.value.factor,
          ...(unit.value.offset === undefined ? {} : { offset: unit.value.offset }),
          ...(unit.value.quantity === undefined ? {} : { quantity: unit.value.quantity }),
        }
      : missingJson([{ of, what: 'unit' }]),
    sensitivity: fact('sensitivity'),
    gain: fact('gain'),
    coupling: fact('coupling'),
    speed: fact('speed'),
    ...survey,
    ...(channel.claimedSamples === undefined ? {} : { claimedSamples: channel.claimedSamples }),
    complex: channel.complex,
    ...(channel.abscissa === undefined ? {} : { along: channel.abscissa.of }),
    heard: channel.heard,
  };
}

function said(entry: Stated<string>, of: string, what: string): unknown {
  return entry.known ? entry.value : missingJson([{ of, what }]);
}
