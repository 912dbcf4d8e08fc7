import { bytesInMemory, openRecording } from '@soundpost/files';
import { expect, test } from 'vitest';
import { record } from './record.ts';
import { rehearse } from './rehearse.ts';
import { done, flowing, pumpPath, world } from './testing/house.ts';

const point = 'pump-drive-end-horizontal';
const small = { plant: pumpPath, point, seconds: '2', rate: '25600' };

interface Shown {
  readonly chains: readonly {
    readonly targets: readonly {
      readonly target: string;
      readonly found: { readonly decibels: number; readonly seen: boolean };
    }[];
  }[];
}
const burst = (json: unknown, chain = 0) =>
  (json as Shown).chains[chain]!.targets.find(({ target }) => target === 'bearing bursts')!.found;

test('a spall is seen in the bursts, and a healthy bearing shows none', async () => {
  const healthy = await done(rehearse, small);
  const spalled = await done(rehearse, { ...small, fault: ['outer-ring:pump-drive-end:1 g peak'] });
  expect(burst(healthy.json).seen).toBe(false);
  expect(burst(spalled.json).seen).toBe(true);
  expect(flowing(healthy)).toContain('Made up from the design, not measured');
});

test('law: the same seed gives the same record, another one another', async () => {
  const [one, same, other] = await Promise.all(
    ['3', '3', '4'].map(async (seed) => burst((await done(rehearse, { ...small, seed })).json).decibels),
  );
  expect(one).toBe(same);
  expect(one).not.toBe(other);
});

test('another transducer stands beside the chosen one', async () => {
  const { json } = await done(rehearse, {
    ...small,
    fault: ['outer-ring:pump-drive-end:1 g peak'],
    against: ['PVT-4/stud'],
  });
  expect((json as Shown).chains).toHaveLength(2);
  expect(burst(json, 1).decibels).toBeLessThan(burst(json, 0).decibels);
});

test.each(['wav', 'uff', 'csv'])('a record written as %s is read back with its rate', async (ending) => {
  const surroundings = world();
  await done(rehearse, { ...small, out: `made.${ending}` }, surroundings);
  const bytes = await surroundings.readBytes(`made.${ending}`);
  const { recording } = await openRecording(bytesInMemory(bytes), `made.${ending}`);
  expect(recording.channels).toHaveLength(1);
  expect(recording.channels[0]!.rate).toMatchObject({ known: true, value: 25_600 });
  if (ending === 'wav') {
    const facts = JSON.parse(new TextDecoder().decode(await surroundings.readBytes('made.wav.json')));
    expect(facts).toMatchObject({ rate: '25600 Hz', seed: 1, channel: { unit: 'V', coupling: 'alternating' } });
  }
});

test('negative: a fault, a place, a size and a file ending that are not there are named', async () => {
  const refused = async (more: Readonly<Record<string, unknown>>) =>
    flowing(await done(rehearse, { ...small, ...more }));
  expect(await refused({ fault: ['outer-rign:pump-drive-end:1 g peak'] })).toMatch(/outer-ring/);
  expect(await refused({ fault: ['outer-ring:impeller:1 g peak'] })).toMatch(/pump-drive-end/);
  expect(await refused({ fault: ['outer-ring:pump-drive-end'] })).toMatch(/KIND:AT:SIZE/);
  expect(await refused({ out: 'made.mp3' })).toMatch(/wav/);
});

test('the facts beside a WAV answer what a WAV leaves open, and another rate than its own is refused', async () => {
  const surroundings = world();
  await done(rehearse, { ...small, out: 'made.wav' }, surroundings);
  const read = flowing(await done(record, { file: 'made.wav' }, surroundings));
  expect(read).toContain('P-301/pump-drive-end-horizontal');
  const facts = new TextDecoder().decode(await surroundings.readBytes('made.wav.json'));
  const wav = await surroundings.readBytes('made.wav');
  const wrong = world({ 'made.wav': wav, 'made.wav.json': facts.replace('"25600 Hz"', '"48000 Hz"') });
  expect(flowing(await done(record, { file: 'made.wav' }, wrong))).toMatch(/48000 Hz.*25600 Hz/);
});

test('taps are put in, ring the mounted resonance as designed, and a loose mount lower', async () => {
  const tapped = { ...small, seconds: '3', rate: '51200', occasion: 'taps:20 m/s2 peak' };
  const peak = async (more: Readonly<Record<string, unknown>>) => {
    const surroundings = world();
    await done(rehearse, { ...tapped, ...more, out: 'taps.wav' }, surroundings);
    const facts = JSON.parse(new TextDecoder().decode(await surroundings.readBytes('taps.wav.json')));
    const { values } = await wholeOf(await surroundings.readBytes('taps.wav'));
    return { facts, peak: values.reduce((most, each) => Math.max(most, Math.abs(each)), 0) };
  };
  const whole = await peak({});
  const loose = await peak({ defect: ['loose-mount:0.3'] });
  expect(whole.facts).toMatchObject({ occasion: 'taps' });
  expect(loose.facts).toMatchObject({ defects: [{ kind: 'loose-mount', size: 0.3 }] });
  // A resonance nearer to the blow rings higher.
  expect(loose.peak).toBeGreaterThan(1.1 * whole.peak);
});

test('law: a calibrator of twice the level gives twice the volts', async () => {
  const rms = async (level: string) => {
    const surroundings = world();
    await done(rehearse, { ...small, occasion: `calibrator:${level} at 159.15 Hz`, out: 'given.wav' }, surroundings);
    const { values } = await wholeOf(await surroundings.readBytes('given.wav'));
    return Math.sqrt(values.reduce((sum, each) => sum + each * each, 0) / values.length);
  };
  // 100 mV/g at 10 m/s² rms, 1 g = 9.80665 m/s².
  expect(await rms('10 m/s2 rms')).toBeCloseTo((0.1 * 10) / 9.80665, 3);
  expect((await rms('20 m/s2 rms')) / (await rms('10 m/s2 rms'))).toBeCloseTo(2, 4);
});

test('negative: an occasion and a defect that are not there are named with those that are', async () => {
  const refused = async (more: Readonly<Record<string, unknown>>) =>
    flowing(await done(rehearse, { ...small, ...more }));
  expect(await refused({ occasion: 'tap' })).toMatch(/running, stopped, at-rest, taps, calibrator/);
  expect(await refused({ occasion: 'calibrator:10 m/s2 rms' })).toMatch(/at 159.15 Hz/);
  expect(await refused({ defect: ['loose-mont'] })).toMatch(/Did you mean 'loose-mount'/);
});

test('another mount, a longer cable and a defect stand beside the chosen chain', async () => {
  const beside = await done(rehearse, {
    ...small,
    against: ['mount:magnet-flat', 'cable-length:300 m'],
    'against-defect': ['polarity'],
  });
  expect(flowing(beside)).toContain('ACC-100 on magnet-flat, 300 m TSP, PORT-24');
  expect(flowing(beside)).toContain('Wrong with it Polarity inverted');
  const alone = await done(rehearse, { ...small, 'against-defect': ['loose-mount'] });
  expect((alone.json as Shown).chains).toHaveLength(2);
});

test('a run-up is told from its first speed to its last', async () => {
  const { json, lines } = await done(rehearse, { ...small, course: 'run-up:1200 r/min:highest' });
  expect(flowing({ lines })).toMatch(/Speed 1200 r\/min to 1486 r\/min of motor/);
  expect(json).toMatchObject({ motion: { speed: { first: expect.closeTo(20, 6) } } });
});

test('how often a spall is seen grows with its size, each with its interval', async () => {
  const { json } = await done(rehearse, {
    ...small,
    seconds: '0.5',
    rate: '20480',
    fault: ['outer-ring:pump-drive-end:1 g peak'],
    detection: 'bearing bursts',
    draws: '2',
  });
  const { detection } = json as {
    readonly detection: readonly { readonly chains: readonly { share: number; low: number; high: number }[] }[];
  };
  const shares = detection.map(({ chains }) => chains[0]!.share);
  expect(shares[0]).toBe(0);
  expect(shares.at(-1)).toBe(1);
  // None of two, by the closed form 1 − (α/2)^(1/n).
  expect(detection[0]!.chains[0]!.high).toBeCloseTo(1 - 0.025 ** (1 / 2), 6);
});

test('negative: a place, a course and a target of detection that are not there are named with those that are', async () => {
  const refused = async (more: Readonly<Record<string, unknown>>) =>
    flowing(await done(rehearse, { ...small, seconds: '1', ...more }));
  expect(await refused({ against: ['mont:magnet'] })).toMatch(/transducer, mount, cable, input or cable-length/);
  expect(await refused({ against: ['mount:magnet-flot'] })).toMatch(/Did you mean 'magnet-flat'/);
  expect(await refused({ course: 'run-up:1200 r/min' })).toMatch(/run-up:100 r\/min:highest/);
  expect(await refused({ detection: 'bearing bursts' })).toMatch(/--fault/);
  const fault = ['outer-ring:pump-drive-end:1 g peak'];
  expect(await refused({ fault, detection: 'bursts' })).toMatch(/bearing bursts/);
});

async function wholeOf(bytes: Uint8Array): Promise<{ readonly values: readonly number[] }> {
  const opened = await openRecording(bytesInMemory(bytes), 'made.wav');
  const values: number[] = [];
  for await (const block of opened.blocks()) values.push(...block.values[0]!);
  return { values };
}
