import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { commands, inMemory, manner, type Outcome, performed } from '../../packages/commands/src/index.ts';
import { root } from '../reading.ts';

/**
 * Negative: what hostile and damaged files do to `accept` and `rehearse`. Each is refused in words or answered within
 * bounds; nothing breaks, no sentence is without its number, and nothing hostile reaches the acceptance file as markup.
 */
const file = (path: string) => new Uint8Array(readFileSync(resolve(root, path)));
const plant = 'examples/acceptance/plant.yaml';
const point = 'F-11/fan-drive-end-horizontal';
const bytes = (text: string) => new TextEncoder().encode(text);

function world(files: Readonly<Record<string, string | Uint8Array>>) {
  return inMemory({
    'house/packages/files/catalogues/generic.yaml': file('packages/files/catalogues/generic.yaml'),
    [plant]: file(plant),
    ...files,
  });
}

const command = (name: string) => commands.find((each) => each.name === name)!;

const records = (
  name: string,
  more = 'unit: V, gain: 1, coupling: direct',
  occasion = '{ kind: running, speed: 1486 r/min }',
) => `soundpost: records
version: 1
session: { title: hostile }
recordings:
  one:
    file: ${name}
    occasion: ${occasion}
    rate: 5120 Hz
    channels:
      a: { channel: 1, point: ${point}, ${more} }
`;

/** What every answer keeps to. */
function bounded(outcome: Outcome, typed: readonly string[] = []): void {
  const repeated = (text: string) => typed.reduce((rest, each) => rest.replaceAll(each, ''), text);
  const text = repeated(outcome.lines.map((line) => line.text).join('\n'));
  expect([0, 1, 2]).toContain(outcome.exit);
  expect(text.match(/NaN|Infinity|undefined|\[object/)).toBeNull();
  expect(text.length).toBeLessThan(60_000);
  const json = repeated(JSON.stringify(outcome.json));
  expect(json.length).toBeLessThan(2_000_000);
  expect(json.match(/NaN|Infinity/)).toBeNull();
}

async function accepted(content: Uint8Array, name = 'r.wav', more?: string, occasion?: string) {
  const surroundings = world({ 'records.yaml': records(name, more, occasion), [name]: content });
  const outcome = await performed(
    command('accept'),
    surroundings,
    { plant, records: 'records.yaml', out: 'out.html', date: '2026-11-26' },
    manner({}),
  );
  bounded(outcome);
  const page = new TextDecoder().decode(surroundings.files.get('out.html'));
  expect(page.match(/NaN|>undefined|\[object/)).toBeNull();
  expect(page.length).toBeLessThan(4_000_000);
  const [recording] = (outcome.json as { recordings: { refused?: string }[] }).recordings;
  return { outcome, page, refused: recording?.refused };
}

interface Wav {
  readonly channels?: number;
  readonly bits?: number;
  readonly form?: number;
  readonly rate?: number;
  readonly claimed?: number;
}

function wav(data: Uint8Array, { channels = 1, bits = 16, form = 1, rate = 5120, claimed = data.length }: Wav = {}) {
  const whole = new Uint8Array(44 + data.length);
  const view = new DataView(whole.buffer);
  const write = (at: number, text: string) => whole.set(bytes(text), at);
  write(0, 'RIFF');
  view.setUint32(4, Math.min(36 + claimed, 0xffff_ffff), true);
  write(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, form, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, (rate * channels * bits) / 8, true);
  view.setUint16(32, (channels * bits) / 8, true);
  view.setUint16(34, bits, true);
  write(36, 'data');
  view.setUint32(40, Math.min(claimed, 0xffff_ffff), true);
  whole.set(data, 44);
  return whole;
}

const floats = (values: (n: number) => number, count = 4096) => {
  const data = new Uint8Array(4 * count);
  const view = new DataView(data.buffer);
  for (let n = 0; n < count; n++) view.setFloat32(4 * n, values(n), true);
  return data;
};
const sine = (n: number) => 0.5 * Math.sin(n / 3);
const float = (values: (n: number) => number, count?: number) => wav(floats(values, count), { bits: 32, form: 3 });

/** A MAT file of one packed variable that unpacks to a packed variable, and so on. */
function deepMat(depth: number): Uint8Array {
  const element = (type: number, content: Uint8Array) => {
    const whole = new Uint8Array(8 + content.length);
    const view = new DataView(whole.buffer);
    view.setUint32(0, type, true);
    view.setUint32(4, content.length, true);
    whole.set(content, 8);
    return whole;
  };
  let inner = element(9, new Uint8Array(64));
  for (let level = 0; level < depth; level++) inner = element(15, new Uint8Array(deflateSync(inner)));
  const head = new Uint8Array(128).fill(32);
  head.set(bytes('MATLAB 5.0 MAT-file'), 0);
  new DataView(head.buffer).setUint16(124, 0x0100, true);
  head.set(bytes('IM'), 126);
  const whole = new Uint8Array(128 + inner.length);
  whole.set(head);
  whole.set(inner, 128);
  return whole;
}

/** One packed element that says it is a matrix of a billion numbers, of zeros. */
function bomb(): Uint8Array {
  const zeros = new Uint8Array(8 * 2 ** 20);
  const view = new DataView(zeros.buffer);
  view.setUint32(0, 14, true);
  view.setUint32(4, 0x7fff_fff0, true);
  const packed = new Uint8Array(deflateSync(zeros));
  const mat = deepMat(0).slice(0, 128);
  const whole = new Uint8Array(136 + packed.length);
  whole.set(mat);
  const head = new DataView(whole.buffer);
  head.setUint32(128, 15, true);
  head.setUint32(132, packed.length, true);
  whole.set(packed, 136);
  return whole;
}

const uff = (lines: readonly string[]) => bytes(`    -1\n    58\n${lines.join('\n')}\n    -1\n`);

const hostile: Readonly<Record<string, readonly [content: Uint8Array, name?: string]>> = {
  'an empty file': [new Uint8Array(0)],
  'a head without samples': [wav(new Uint8Array(0))],
  'one sample': [float(sine, 1)],
  'two samples': [float(sine, 2)],
  'a head that claims 4 GB': [wav(floats(sine), { bits: 32, form: 3, claimed: 0xffff_ffff })],
  'a head cut in its middle': [float(sine).subarray(0, 30)],
  'a record cut inside a frame': [float(sine).subarray(0, 1003)],
  'a rate of zero': [wav(floats(sine), { bits: 32, form: 3, rate: 0 })],
  'a rate of 4 GHz': [wav(floats(sine), { bits: 32, form: 3, rate: 0xffff_ffff })],
  'zero channels': [wav(floats(sine), { bits: 32, form: 3, channels: 0 })],
  '65,535 channels': [wav(new Uint8Array(2 * 65_535), { channels: 65_535 })],
  'a hundred channels': [wav(new Uint8Array(200 * 400).fill(3), { channels: 100 })],
  'nothing but NaN': [float(() => Number.NaN)],
  'NaN here and there': [float((n) => (n % 97 === 0 ? Number.NaN : sine(n)))],
  'infinity at once': [float((n) => (n === 5 ? Number.POSITIVE_INFINITY : sine(n)))],
  'the largest floats': [float((n) => (n % 2 === 0 ? 3.4e38 : -3.4e38))],
  'the smallest floats': [float((n) => (n % 2 === 0 ? 1e-45 : 0))],
  'zeros alone': [float(() => 0)],
  'one value alone': [float(() => 12)],
  'the other order of bytes': [wav(floats(sine).reverse(), { bits: 32, form: 3 })],
  'a packed variable in a packed variable, forty deep': [deepMat(40), 'r.mat'],
  'a packed variable that claims 2 GB': [bomb(), 'r.mat'],
  'a MAT head alone': [deepMat(0).subarray(0, 128), 'r.mat'],
  'a Universal File that claims 999,999,999 values': [
    uff([
      'a',
      'b',
      'c',
      'd',
      'e',
      '    1         0    0         0 NONE 0 0 NONE 0 0',
      '         4 999999999         1  0.0  1.0  0.0',
      '1.0 2.0 3.0',
    ]),
    'r.uff',
  ],
  'a Universal File without an end': [bytes('    -1\n    58\n'), 'r.uff'],
  'a text of a hundred columns': [
    bytes(
      `${Array.from({ length: 100 }, (_, n) => `c${n}`).join(',')}\n${`${Array.from({ length: 100 }, (_, n) => n / 7).join(',')}\n`.repeat(300)}`,
    ),
    'r.csv',
  ],
  'a text of 100,000 columns': [bytes(`${'1,'.repeat(100_000)}\n${'2,'.repeat(100_000)}\n`), 'r.csv'],
  'a text of one endless line': [bytes('1'.repeat(2_000_000)), 'r.csv'],
  'numbers beyond every range': [bytes(`a\n${'1e400\n-1e400\n1e-400\n'.repeat(200)}`), 'r.csv'],
  'a page of the web': [bytes('<!doctype html><title>not found</title>'), 'r.csv'],
  'bytes of no kind': [Uint8Array.from({ length: 5000 }, (_, n) => (n * 7919 + 13) & 255), 'r.bin'],
};

describe('accept', () => {
  test.each(Object.entries(hostile))('negative: %s', async (_, [content, name]) => {
    for (const occasion of [
      '{ kind: running, speed: 1486 r/min }',
      '{ kind: taps, push: with the positive direction }',
    ]) {
      await accepted(content, name, undefined, occasion);
    }
  });

  test.each(['at-rest', 'power-on', 'stopped'])(
    'negative: a record of two samples, of NaN and of zeros, made %s',
    async (kind) => {
      for (const content of [float(sine, 2), float(() => Number.NaN), float(() => 0)]) {
        const { outcome } = await accepted(content, 'r.wav', undefined, `{ kind: ${kind} }`);
        const { checks } = outcome.json as { checks: { verdict: string; check: string }[] };
        // Nothing is proven by nothing.
        expect(checks.filter(({ verdict, check }) => verdict === 'meets' && check !== 'recorder-sensitivity')).toEqual(
          [],
        );
      }
    },
  );

  test('negative: records files that name what is not there, and more than there is', async () => {
    const told = async (text: string) => {
      const surroundings = world({ 'records.yaml': text, 'r.wav': float(sine) });
      const outcome = await performed(command('accept'), surroundings, { plant, records: 'records.yaml' }, manner({}));
      bounded(outcome);
      return outcome.lines
        .map((line) => line.text)
        .join(' ')
        .replace(/\s+/g, ' ');
    };
    expect(await told(records('r.wav').replace(point, 'F-11/fan'))).toContain('is no measuring point of this plant');
    expect(await told(records('r.wav').replace('channel: 1', 'channel: 7'))).toMatch(/a channel of the recording/);
    expect(await told(records('r.wav').replace('channel: 1', 'channel: 0'))).toMatch(/a channel of the recording/);
    expect(await told(records('../r.wav'))).toMatch(/a file that exists/);
    expect(await told(records('r.wav').replace('rate: 5120 Hz', 'rate: 0 Hz'))).toMatch(/rate/);
    expect(await told(records('r.wav').replace('rate: 5120 Hz', 'rate: -5 Hz'))).toMatch(/rate/);
    expect(await told('soundpost: records\nversion: 1\nsession: { title: none }\n')).toContain('none');
    expect(await told('soundpost: plant\nversion: 1\n')).toMatch(/records/);
  });

  test('law: the records of the example with bytes written over are read, refused or in doubt', {
    timeout: 240_000,
  }, async () => {
    const names = ['healthy-at-rest.wav', 'healthy-calibrator.wav', 'loop-running.wav'];
    const originals = names.map((name) => file(`examples/acceptance/records/${name}`));
    await fc.assert(
      fc.asyncProperty(
        fc.nat({ max: names.length - 1 }),
        fc.array(fc.tuple(fc.nat({ max: 120 }), fc.nat({ max: 255 })), { minLength: 1, maxLength: 5 }),
        fc.boolean(),
        async (which, changes, cut) => {
          const content = originals[which]!.slice(0, cut ? 5001 : undefined);
          for (const [at, byte] of changes) content[at] = byte;
          await accepted(content, 'r.wav', 'unit: V, gain: 1, coupling: direct', '{ kind: at-rest }');
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe('rehearse', () => {
  const told = async (given: Readonly<Record<string, unknown>>) => {
    const small = { plant, point, seconds: '1', rate: '2560', ...given };
    const outcome = await performed(command('rehearse'), world({}), small, manner({}));
    bounded(
      outcome,
      [given.seconds].filter((each) => typeof each === 'string'),
    );
    return outcome;
  };

  test.each([
    { seconds: '1e9' },
    { seconds: '-1' },
    { seconds: 'NaN' },
    { seconds: 'Infinity' },
    { rate: '1e12' },
    { rate: '0.5' },
    { seed: '1e400' },
    { fault: ['unbalance:fan:1e300 g peak'], seconds: '1e9' },
    { fault: ['unbalance'] },
    { fault: ['__proto__:fan:1 g peak'] },
    { occasion: '__proto__' },
    { occasion: 'constructor' },
    { occasion: 'calibrator:10 m/s2 rms at 0 Hz' },
    { occasion: 'calibrator:10 m/s2 rms at -5 Hz' },
    { occasion: 'taps:0 g peak' },
    { defect: ['toString'] },
    { defect: ['sensitivity:0'] },
    { defect: ['loose-mount:'] },
    { defect: ['loose-mount:x'] },
    { out: 'made' },
    { out: '.wav.exe' },
    { against: '__proto__/stud' },
  ])('negative: %j is refused in words', async (given) => {
    expect((await told(given)).exit).toBe(2);
  });

  test.each([
    { fault: ['unbalance:fan:1e6 g peak'] },
    { defect: ['loose-mount:1e-9'] },
    { defect: ['sensitivity:1e9'] },
    { state: 'constructor' },
    { occasion: 'taps:1e6 g peak' },
    { occasion: 'calibrator:10 m/s2 rms at 1 MHz' },
  ])('a size nobody has met, %j, is answered or refused', async (given) => {
    await told(given);
  });
});
