import { type Finding, notStated, type Remark, type Stated, si, stated } from '@soundpost/core';
import type { ByteSource } from '../byte-source.ts';
import { headAgainstItself, lengthAgainstFile } from '../contradictions.ts';
import {
  type Block,
  framesInBlock,
  mostChannels,
  type OpenRecording,
  type RecordingFormat,
  refusedAt,
} from '../open-recording.ts';
import { silentChannel } from '../silent-channel.ts';
import { type Chunk, chunksOf, letters, neverClosed, viewOf } from './riff-chunks.ts';
import { type SampleForm, sampleForms, separated } from './wav-samples.ts';

/**
 * WAV: RIFF, RF64 and BW64 with integers of 16, 24 and 32 bits or floats of 32 and 64, plain or extensible. It carries no
 * unit and no scale: those are asked for. Sources: RIFF/WAVE layout, EBU Tech 3306 (RF64) and 3285 (bext), from memory.
 */
export const wavFormat: RecordingFormat<'wav'> = {
  kind: 'wav',
  name: 'WAV',
  recognises: (first) => /^(RIFF|RF64|BW64|RIFX)$/.test(letters(first, 0)),
  open,
};

interface Form {
  readonly channels: number;
  readonly rate: number;
  readonly sample: SampleForm;
  readonly findings: readonly Finding[];
}

async function open(source: ByteSource, file: string): Promise<OpenRecording> {
  const head = await source.read(0, 12);
  if (letters(head, 0) === 'RIFX') {
    throw refusedAt(file, 'byte 0', { read: 'RIFX', expected: "little-endian bytes, 'RIFF', 'RF64' or 'BW64'" });
  }
  if (letters(head, 8) !== 'WAVE') {
    throw refusedAt(file, 'byte 8', {
      read: letters(head, 8),
      expected: "'WAVE'",
      suggestion: 'A RIFF file of another sort.',
    });
  }
  const { wide, riffLength, chunks } = await chunksOf(source, file);
  const form = await formOf(source, file, chunks);
  const data = chunks.find(({ name }) => name === 'data');
  if (data === undefined) {
    throw refusedAt(file, 'the whole of it', {
      read: chunks
        .map(({ name }) => name)
        .slice(0, 8)
        .join(', '),
      expected: "a chunk 'data' with the samples",
      suggestion: 'The file may have been cut off before its samples.',
    });
  }
  const frame = form.channels * form.sample.bytes;
  const unclosed = neverClosed(data.claimed, riffLength, data.from);
  const there = unclosed ? source.size - data.from : Math.min(data.claimed, source.size - data.from);
  const frames = Math.floor(there / frame);
  const said = await saidIn(source, chunks);
  const channels = Array.from({ length: form.channels }, (_, index) => ({
    ...silentChannel(index),
    rate: form.rate > 0 ? stated(si('frequency', form.rate), `${form.rate} Hz`) : notStated,
    samples: frames,
    claimedSamples: Math.floor(data.claimed / frame),
    ...(form.sample.step === undefined ? {} : { formStep: form.sample.step }),
    heard: form.rate > 0 ? {} : { rate: 'the file says 0' },
  }));
  const findings = [
    ...form.findings,
    ...(data.claimed > there || (unclosed && there > 0)
      ? [lengthAgainstFile(file, 'bytes of samples', data.claimed, there)]
      : []),
    ...(data.claimed <= there && !unclosed && riffLength + 8 !== source.size && riffLength !== 0xffff_ffff
      ? [lengthAgainstFile(file, 'bytes', riffLength + 8, source.size)]
      : []),
    ...(there % frame === 0
      ? []
      : [headAgainstItself(file, `the samples end inside a frame of ${frame} bytes`, 'whole frames')]),
  ];
  return {
    recording: {
      form: `WAV${wide ? ' with lengths of 64 bits' : ''}, ${form.sample.name}`,
      channels,
      start: said.start,
      remarks: said.remarks,
      findings,
    },
    blocks: () => blocks(source, data.from, frames, form),
  };
}

async function formOf(source: ByteSource, file: string, chunks: readonly Chunk[]): Promise<Form> {
  const chunk = chunks.find(({ name }) => name === 'fmt ');
  const bytes = chunk === undefined ? new Uint8Array(0) : await source.read(chunk.from, Math.min(chunk.claimed, 40));
  if (bytes.length < 16) {
    throw refusedAt(file, chunk === undefined ? 'the whole of it' : `byte ${chunk.from}`, {
      read: `${bytes.length} bytes of form`,
      expected: "a chunk 'fmt ' of at least 16 bytes",
    });
  }
  const view = viewOf(bytes);
  const tag = view.getUint16(0, true);
  const channels = view.getUint16(2, true);
  const rate = view.getUint32(4, true);
  const bits = view.getUint16(14, true);
  const inner = tag === 0xfffe && bytes.length >= 26 ? view.getUint16(24, true) : tag;
  const sample = sampleForms[`${inner}/${bits}`];
  if (sample === undefined) {
    throw refusedAt(file, `byte ${chunk!.from}`, {
      read: `format ${inner} of ${bits} bits`,
      expected: 'integers (format 1) of 16, 24 or 32 bits, or floats (format 3) of 32 or 64',
      suggestion: 'Coded sound has lost what a measurement needs; export the record uncompressed.',
    });
  }
  if (channels === 0 || channels > mostChannels) {
    throw refusedAt(file, `byte ${chunk!.from + 2}`, {
      read: `${channels} channels`,
      expected: `1 to ${mostChannels} channels`,
    });
  }
  const frame = view.getUint16(12, true);
  const perSecond = view.getUint32(8, true);
  return {
    channels,
    rate,
    sample,
    findings: [
      ...(frame === channels * sample.bytes
        ? []
        : [
            headAgainstItself(
              file,
              `a frame is said to have ${frame} bytes`,
              `${channels * sample.bytes} by channels and bits`,
            ),
          ]),
      ...(perSecond === rate * channels * sample.bytes
        ? []
        : [
            headAgainstItself(
              file,
              `${perSecond} bytes a second`,
              `${rate * channels * sample.bytes} by rate, channels and bits`,
            ),
          ]),
    ],
  };
}

/** What the side chunks say for people: names and comments, and the start of a broadcast extension. */
async function saidIn(source: ByteSource, chunks: readonly Chunk[]) {
  const remarks: Remark[] = [];
  let start: Stated<string> = notStated;
  for (const chunk of chunks.slice(0, 64)) {
    const bytes = await source.read(chunk.from, Math.min(chunk.claimed, 4096));
    if (chunk.name === 'LIST' && letters(bytes, 0) === 'INFO') remarks.push(...infoIn(bytes));
    if (chunk.name === 'bext' && bytes.length >= 338) {
      const description = wordsIn(bytes.subarray(0, 256));
      if (description !== '') remarks.push({ name: 'description', text: description });
      const when = `${wordsIn(bytes.subarray(320, 330))} ${wordsIn(bytes.subarray(330, 338))}`.trim();
      if (/\d/.test(when)) start = stated(when, when);
    }
  }
  return { remarks, start };
}

function infoIn(bytes: Uint8Array): readonly Remark[] {
  const remarks: Remark[] = [];
  for (let at = 4; at + 8 <= bytes.length && remarks.length < 32; ) {
    const length = viewOf(bytes).getUint32(at + 4, true);
    const text = wordsIn(bytes.subarray(at + 8, Math.min(bytes.length, at + 8 + length)));
    if (text !== '') remarks.push({ name: letters(bytes, at), text });
    at += 8 + length + (length % 2);
  }
  return remarks;
}

function wordsIn(bytes: Uint8Array): string {
  const end = bytes.indexOf(0);
  return new TextDecoder('windows-1252').decode(end < 0 ? bytes : bytes.subarray(0, end)).trim();
}

async function* blocks(source: ByteSource, start: number, frames: number, form: Form): AsyncGenerator<Block> {
  const atOnce = framesInBlock(form.channels);
  const frame = form.channels * form.sample.bytes;
  for (let from = 0; from < frames; from += atOnce) {
    const bytes = await source.read(start + from * frame, Math.min(atOnce, frames - from) * frame);
    const values = separated(bytes, form.channels, form.sample);
    if (values[0]!.length === 0) return;
    yield { from, values };
  }
}
