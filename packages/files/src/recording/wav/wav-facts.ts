import { parseQuantity, type RecordedChannel, type Stated, si, stated } from '@soundpost/core';
import { type OpenRecording, refusedAt } from '../open-recording.ts';
import { recordedUnit } from '../recorded-unit.ts';

/** The file beside a WAV that says what a WAV cannot: `tap.wav.json` beside `tap.wav`. */
export function factsFileOf(path: string): string | undefined {
  return /\.wav$/i.test(path) ? `${path}.json` : undefined;
}

const mark = 'recording facts';

/**
 * A WAV with what the file beside it says of its channels: name, unit, sensitivity, gain, coupling and speed, each taken
 * only where it is text or a number. Throws Refusal where it is no such file, or tells another rate than the WAV.
 */
export function withFacts(open: OpenRecording, bytes: Uint8Array, file: string): OpenRecording {
  const facts = readFacts(bytes, file);
  const said = facts.channel;
  const ofChannels = Array.isArray(said) ? said : [said];
  const { channels } = open.recording;
  if (ofChannels.length !== channels.length) {
    throw refusedAt(file, 'channel', {
      read: `facts of ${ofChannels.length} channels`,
      expected: `those of the ${channels.length} in the WAV`,
    });
  }
  const speed = textOf(facts.speed);
  return {
    ...open,
    recording: {
      ...open.recording,
      channels: channels.map((channel, index) => named(channel, ofChannels[index], speed, facts.rate, file)),
    },
  };
}

type Facts = Readonly<Record<string, unknown>>;

function readFacts(bytes: Uint8Array, file: string): Facts {
  let read: unknown;
  try {
    read = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    read = undefined;
  }
  if (isFacts(read) && read.soundpost === mark) return read;
  throw refusedAt(file, 'the whole of it', {
    read: 'a file beside the WAV that is not one of facts',
    expected: `JSON with "soundpost": "${mark}"`,
    suggestion: 'Rename it, if it has nothing to do with the WAV.',
  });
}

function isFacts(read: unknown): read is Facts {
  return typeof read === 'object' && read !== null && !Array.isArray(read);
}

function textOf(value: unknown): Stated<string> | undefined {
  if (typeof value === 'number' && Number.isFinite(value)) return stated(String(value), String(value));
  return typeof value === 'string' && value.trim() !== '' ? stated(value, value) : undefined;
}

function named(
  channel: RecordedChannel,
  facts: unknown,
  speed: Stated<string> | undefined,
  rate: unknown,
  file: string,
): RecordedChannel {
  if (!isFacts(facts)) return channel;
  checkRate(channel, rate, file);
  const unit = textOf(facts.unit);
  const heard = unit?.known === true ? recordedUnit(unit.value) : undefined;
  const text = (fact: 'name' | 'sensitivity' | 'gain' | 'coupling') => textOf(facts[fact]) ?? channel[fact];
  const name = text('name');
  return {
    ...channel,
    of: name.known ? name.value : channel.of,
    name,
    unit: heard?.unit ?? channel.unit,
    sensitivity: text('sensitivity'),
    gain: text('gain'),
    coupling: text('coupling'),
    speed: speed ?? channel.speed,
  };
}

function checkRate(channel: RecordedChannel, rate: unknown, file: string): void {
  if (typeof rate !== 'string' || !channel.rate.known) return;
  const said = si('frequency', parseQuantity(rate, 'frequency'));
  if (Math.abs(said - channel.rate.value) <= 1e-6 * channel.rate.value) return;
  throw refusedAt(file, 'rate', {
    read: rate,
    expected: `${channel.rate.value} Hz, as the WAV itself says`,
    suggestion: 'The two do not belong together, or one was resampled.',
  });
}
