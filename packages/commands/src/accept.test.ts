import { createHash } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { accept } from './accept.ts';
import type { InMemory } from './in-memory.ts';
import { acceptancePlant, acceptanceRecords, acceptanceWorld } from './testing/acceptance-example.ts';
import { done, fileOf, flowing } from './testing/house.ts';

const given = { plant: acceptancePlant, records: acceptanceRecords };

interface Shown {
  readonly points: readonly { readonly at: string; readonly verdict: string }[];
  readonly checks: readonly { readonly check: string; readonly at: string; readonly verdict: string }[];
  readonly identified: readonly {
    readonly property: string;
    readonly at: string;
    readonly standing: string;
    readonly found: { readonly value: number };
    readonly interval: { readonly low: number; readonly high: number };
  }[];
  readonly handedBack: {
    readonly points: readonly { readonly at: string; readonly outcome: { readonly after: string } }[];
  };
  readonly recordings: readonly { readonly sha256: string; readonly refused?: string }[];
  readonly unproven: readonly { readonly at: string; readonly checks: readonly string[] }[];
  readonly questions: readonly { readonly of: string; readonly what: string }[];
  readonly findings: readonly { readonly rule: string }[];
}

describe('the example', () => {
  let outcome: Awaited<ReturnType<typeof done>>;
  let surroundings: InMemory;
  let json: Shown;
  beforeAll(async () => {
    surroundings = acceptanceWorld();
    outcome = await done(accept, { ...given, out: 'accepted.html', date: '2026-11-26' }, surroundings);
    json = outcome.json as Shown;
  });

  test('every fault that was put in is found at its point, and the healthy chain has none', () => {
    const failed = json.checks.filter(({ verdict }) => verdict === 'fails').map(({ at, check }) => `${at}: ${check}`);
    expect(failed).toEqual(
      expect.arrayContaining([
        'F-11/fan-drive-end-vertical: sensitivity',
        'F-11/fan-free-end-horizontal: resonance',
        'F-11/motor-drive-end-horizontal: tap-place',
        'F-11/fan-drive-end-loop: loop-scale',
      ]),
    );
    // A loose mount may show while running too; no fault shows where none was put in.
    expect(
      failed.filter(
        (each) =>
          !/^F-11\/(fan-drive-end-(vertical: sensitivity|loop: loop-scale)|fan-free-end-horizontal: (resonance|loose-mount)|motor-drive-end-horizontal: tap-place)$/.test(
            each,
          ),
      ),
    ).toEqual([]);
    expect(json.findings).toEqual([]);
    expect(outcome.exit).toBe(1);
  });

  test('what was put in lies in the interval it was identified with, and is off', () => {
    const off = json.identified.filter(({ standing }) => standing === 'off');
    const at = (point: string, property: string) =>
      json.identified.find((each) => each.at === point && each.property === property)!;
    expect(off.map(({ at: point, property }) => `${point}: ${property}`)).toEqual([
      'F-11/fan-drive-end-vertical: gain-ratio',
      'F-11/fan-free-end-horizontal: mounted-resonance',
    ]);
    const gain = at('F-11/fan-drive-end-vertical', 'gain-ratio');
    expect(gain.interval.low).toBeLessThan(0.2);
    expect(gain.interval.high).toBeGreaterThan(0.2);
    const healthy = at('F-11/fan-drive-end-horizontal', 'mounted-resonance').found.value;
    expect(at('F-11/fan-free-end-horizontal', 'mounted-resonance').found.value / healthy).toBeCloseTo(0.35, 2);
  });

  test('handed back, the chain with the wrong sensitivity no longer meets its targets', () => {
    const after = new Map(json.handedBack.points.map(({ at, outcome: judged }) => [at, judged.after]));
    expect(after.get('F-11/fan-drive-end-vertical')).toBe('fails');
    expect(after.get('F-11/fan-drive-end-horizontal')).toBe('meets');
    expect(flowing(outcome)).toMatch(/Handed back to the design/);
  });

  test('hashes are those of the files, as any program computes them', () => {
    const rest = surroundings.files.get('examples/acceptance/records/healthy-at-rest.wav')!;
    expect(json.recordings[0]!.sha256).toBe(createHash('sha256').update(rest).digest('hex'));
  });

  test('what could not be proven names each record once with how it is made', () => {
    const text = flowing(outcome);
    for (const how of ['begins before the supply is switched on', 'five taps beside the transducer']) {
      expect(text.split(how)).toHaveLength(2);
    }
    const pairs = json.unproven.flatMap(({ at, checks }) => checks.map((each) => `${at} ${each}`));
    expect(new Set(pairs).size).toBe(pairs.length);
  });

  describe('as a file', () => {
    const page = () => new TextDecoder().decode(surroundings.files.get('accepted.html'));

    test('its hash can be computed again from the line its own words name', () => {
      const lines = page().split('\n');
      const data = lines[lines.findIndex((line) => /^<script.*acceptance-data/.test(line)) + 1]!;
      const hash = createHash('sha256').update(data, 'utf8').digest('hex');
      expect(page().match(/<p class="hash">([0-9a-f]{64})<\/p>/)![1]).toBe(hash);
      const held = JSON.parse(data) as Shown & { readonly acceptedOn: string };
      expect(held.acceptedOn).toBe('2026-11-26');
      expect(held.checks).toEqual(JSON.parse(JSON.stringify(json.checks)));
    });

    test('it loads nothing and runs nothing', () => {
      const shown = page().replace(/acceptance-data">\n.*\n/, '');
      expect(shown.includes('default-src &#39;none&#39;')).toBe(true);
      expect(shown.match(/https?:|src=|url\(|@import|<link|onclick|<script>/)).toBeNull();
    });

    test('same records, same bytes', async () => {
      const again = acceptanceWorld();
      await done(accept, { ...given, out: 'accepted.html', date: '2026-11-26' }, again);
      expect(new TextDecoder().decode(again.files.get('accepted.html')) === page()).toBe(true);
    });

    test('it holds what it must', () => {
      for (const words of [
        'content hash of the design',
        'SHA-256 of the records file',
        'What could not be proven',
        'Handed back to the design',
        'Prepared',
        'Checked',
        'Approved',
        'Faults of the machine, not of the chain',
        'by the recording:',
        'Contradictions between header, data and stated facts',
      ]) {
        expect(page().includes(words), words).toBe(true);
      }
      expect(page().match(/<svg class="drawing"/g)!.length).toBeGreaterThan(20);
    });
  });
});

test('negative: a file that is no page, and a date that is none, are refused before anything is written', async () => {
  const surroundings = acceptanceWorld();
  expect(flowing(await done(accept, { ...given, out: 'accepted.pdf' }, surroundings))).toMatch(/ends in .html/);
  expect(flowing(await done(accept, { ...given, out: 'a.html', date: 'today' }, surroundings))).toMatch(/2026-11-26/);
  expect(surroundings.files.has('a.html')).toBe(false);
});

const oneRecord = (more: string, channel = '') => `soundpost: records
version: 1
session: { title: one record }
recordings:
  run:
    file: run.csv
    occasion: { kind: running }
${more}    channels:
      one: { channel: 1, point: F-11/fan-drive-end-horizontal${channel} }
`;
const sine = Array.from({ length: 20_000 }, (_, n) => (0.5 * Math.sin(n / 7)).toFixed(6)).join('\n');

test('rate and unit on the command line answer what nobody says, and stand as such', async () => {
  const surroundings = acceptanceWorld({ 'records.yaml': oneRecord(''), 'run.csv': `x\n${sine}\n` });
  const asked = (await done(accept, { plant: acceptancePlant, records: 'records.yaml' }, surroundings)).json as Shown;
  expect(asked.questions.map(({ what }) => what).join()).toMatch(/sampling rate.*unit/);
  const answered = await done(
    accept,
    { plant: acceptancePlant, records: 'records.yaml', rate: '5120 Hz', unit: 'V', out: 'a.html' },
    surroundings,
  );
  expect((answered.json as Shown).questions.map(({ what }) => what).join()).not.toMatch(/sampling rate|unit of/);
  expect(new TextDecoder().decode(surroundings.files.get('a.html')).includes('on the command line:')).toBe(true);
});

test('a rate on the command line does not override one that is stated', async () => {
  const surroundings = acceptanceWorld({
    'records.yaml': oneRecord('    rate: 2560 Hz\n', ', unit: V'),
    'run.csv': `x\n${sine}\n`,
  });
  const { json } = await done(
    accept,
    { plant: acceptancePlant, records: 'records.yaml', rate: '5120 Hz' },
    surroundings,
  );
  const [recording] = (json as { recordings: { channels: { rate: { value: number } }[] }[] }).recordings;
  expect(recording!.channels[0]!.rate.value).toBe(2560);
});

test('a unit that head and records file state differently is a finding, and unknown', async () => {
  const surroundings = acceptanceWorld({
    'records.yaml': oneRecord('    rate: 2560 Hz\n', ', unit: m/s2'),
    'run.csv': `acceleration [g]\n${sine}\n`,
  });
  const { json } = await done(accept, { plant: acceptancePlant, records: 'records.yaml' }, surroundings);
  expect((json as Shown).findings.map(({ rule }) => rule)).toContain('recording/answer-differs');
  expect((json as Shown).questions.map(({ what }) => what).join()).toMatch(/unit: recording and records file differ/);
});

test('a text of two readings is answered in the records file', async () => {
  const two = Array.from({ length: 4000 }, (_, n) => `${n % 7},${1000 + (n % 13)}`).join('\n');
  const records = (more: string) => oneRecord(`    rate: 2560 Hz\n${more}`, ', unit: V, gain: 1, coupling: direct');
  const refused = acceptanceWorld({ 'records.yaml': records(''), 'run.csv': `${two}\n` });
  const first = (await done(accept, { plant: acceptancePlant, records: 'records.yaml' }, refused)).json as Shown;
  expect(first.recordings[0]!.refused).toMatch(/sign|separator/);
  const told = acceptanceWorld({ 'records.yaml': records('    sign: comma\n'), 'run.csv': `${two}\n` });
  const second = (await done(accept, { plant: acceptancePlant, records: 'records.yaml' }, told)).json as Shown;
  expect(second.recordings[0]!.refused).toBeUndefined();
});

test('hostile names stay text', async () => {
  const name = '</script><img src=x onerror=alert(1)>';
  const surroundings = acceptanceWorld({
    'records.yaml': fileOf(acceptanceRecords)
      .replaceAll('records/', 'examples/acceptance/records/')
      .replace('title: Acceptance of', `title: "${name}" #`),
  });
  await done(accept, { ...given, records: 'records.yaml', out: 'a.html' }, surroundings);
  const page = new TextDecoder().decode(surroundings.files.get('a.html'));
  expect(page.includes('<img')).toBe(false);
  expect(page.match(/<\/script>/g)).toHaveLength(1);
});
