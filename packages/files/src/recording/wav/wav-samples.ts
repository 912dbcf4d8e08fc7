import { viewOf } from './riff-chunks.ts';

/** How one sample is written. */
export interface SampleForm {
  readonly name: string;
  readonly bytes: number;
  /** Smallest step between two values, where full scale is 1; floats have none. */
  readonly step?: number;
  value(view: DataView, at: number): number;
}

const integer = (bits: 16 | 24 | 32, value: SampleForm['value']): SampleForm => ({
  name: `integers of ${bits} bits, as shares of full scale`,
  bytes: bits / 8,
  step: 2 ** (1 - bits),
  value,
});

/** By format tag (1 integer, 3 float) and bits. */
export const sampleForms: Readonly<Record<string, SampleForm>> = {
  '1/16': integer(16, (view, at) => view.getInt16(at, true) / 0x8000),
  '1/24': integer(24, (view, at) => (view.getUint16(at, true) + view.getInt8(at + 2) * 0x1_0000) / 0x80_0000),
  '1/32': integer(32, (view, at) => view.getInt32(at, true) / 0x8000_0000),
  '3/32': { name: 'floats of 32 bits', bytes: 4, value: (view, at) => view.getFloat32(at, true) },
  '3/64': { name: 'floats of 64 bits', bytes: 8, value: (view, at) => view.getFloat64(at, true) },
};

/** The samples of interleaved frames, one array for each channel. */
export function separated(bytes: Uint8Array, channels: number, form: SampleForm): readonly Float64Array[] {
  const view = viewOf(bytes);
  const frames = Math.floor(bytes.length / (channels * form.bytes));
  const values = Array.from({ length: channels }, () => new Float64Array(frames));
  let at = 0;
  for (let frame = 0; frame < frames; frame++) {
    for (let channel = 0; channel < channels; channel++, at += form.bytes) {
      values[channel]![frame] = form.value(view, at);
    }
  }
  return values;
}
