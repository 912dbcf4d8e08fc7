import { Broken } from '@soundpost/core';
import { viewOf } from './riff-chunks.ts';

/** How samples are written: integers hold values from −1 up to just below 1 and are clipped there. */
export type WavForm = 'int16' | 'int24' | 'int32' | 'float32' | 'float64';

export interface WavContent {
  /** One array for each channel, all of one length. */
  readonly channels: readonly Float64Array[];
  /** Samples a second, whole: the format holds no other. */
  readonly rate: number;
  readonly form: WavForm;
}

const forms: Readonly<Record<WavForm, { readonly tag: 1 | 3; readonly bits: number }>> = {
  int16: { tag: 1, bits: 16 },
  int24: { tag: 1, bits: 24 },
  int32: { tag: 1, bits: 32 },
  float32: { tag: 3, bits: 32 },
  float64: { tag: 3, bits: 64 },
};

const framesAtOnce = 16_384;

/** The bytes of a WAV file, head first, in pieces. What would not fit lengths of 32 bits is written as RF64. */
export function* wavBytes({ channels, rate, form }: WavContent): Generator<Uint8Array> {
  const frames = channels[0]?.length ?? 0;
  if (channels.length === 0 || channels.some((each) => each.length !== frames)) {
    throw new Broken('a WAV file has channels of one length', { channels: channels.length });
  }
  if (!Number.isInteger(rate) || rate < 1 || rate > 0xffff_ffff) {
    throw new Broken('a WAV file has a whole number of samples a second', { rate });
  }
  const { tag, bits } = forms[form];
  const frame = (channels.length * bits) / 8;
  const length = frames * frame;
  yield headOf({ tag, bits, rate, channels: channels.length, frame, length });
  for (let from = 0; from < frames; from += framesAtOnce) {
    yield framesOf(channels, from, Math.min(frames, from + framesAtOnce), form, bits / 8);
  }
  if (length % 2 === 1) yield new Uint8Array(1);
}

interface Head {
  readonly tag: number;
  readonly bits: number;
  readonly rate: number;
  readonly channels: number;
  readonly frame: number;
  readonly length: number;
}

function headOf({ tag, bits, rate, channels, frame, length }: Head): Uint8Array {
  const padded = length + (length % 2);
  const wide = padded + 36 > 0xffff_fff0;
  const bytes = new Uint8Array(wide ? 80 : 44);
  const view = viewOf(bytes);
  const word = (at: number, text: string) => bytes.set(new TextEncoder().encode(text), at);
  word(0, wide ? 'RF64' : 'RIFF');
  view.setUint32(4, wide ? 0xffff_ffff : 36 + padded, true);
  word(8, 'WAVE');
  let at = 12;
  if (wide) {
    word(at, 'ds64');
    view.setUint32(at + 4, 28, true);
    view.setBigUint64(at + 8, BigInt(72 + padded), true);
    view.setBigUint64(at + 16, BigInt(length), true);
    view.setBigUint64(at + 24, BigInt(length / frame), true);
    at += 36;
  }
  word(at, 'fmt ');
  view.setUint32(at + 4, 16, true);
  view.setUint16(at + 8, tag, true);
  view.setUint16(at + 10, channels, true);
  view.setUint32(at + 12, rate, true);
  view.setUint32(at + 16, rate * frame, true);
  view.setUint16(at + 20, frame, true);
  view.setUint16(at + 22, bits, true);
  word(at + 24, 'data');
  view.setUint32(at + 28, wide ? 0xffff_ffff : length, true);
  return bytes;
}

function framesOf(
  channels: readonly Float64Array[],
  from: number,
  to: number,
  form: WavForm,
  width: number,
): Uint8Array {
  const bytes = new Uint8Array((to - from) * channels.length * width);
  const view = viewOf(bytes);
  let at = 0;
  for (let frame = from; frame < to; frame++) {
    for (const channel of channels) {
      writers[form](view, at, channel[frame]!);
      at += width;
    }
  }
  return bytes;
}

/** The nearest step of an integer of so many bits; what lies beyond full scale stays there. */
function step(value: number, bits: number): number {
  const full = 2 ** (bits - 1);
  return Math.max(-full, Math.min(full - 1, Math.round(value * full)));
}

const writers: Readonly<Record<WavForm, (view: DataView, at: number, value: number) => void>> = {
  int16: (view, at, value) => view.setInt16(at, step(value, 16), true),
  int24: (view, at, value) => {
    const whole = step(value, 24);
    view.setUint16(at, whole & 0xffff, true);
    view.setInt8(at + 2, whole >> 16);
  },
  int32: (view, at, value) => view.setInt32(at, step(value, 32), true),
  float32: (view, at, value) => view.setFloat32(at, value, true),
  float64: (view, at, value) => view.setFloat64(at, value, true),
};
