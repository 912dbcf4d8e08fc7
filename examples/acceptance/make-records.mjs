// Makes every recording of this example again, byte for byte: rehearsals of its plant, with something wrong put into
// some of the chains. `node examples/acceptance/make-records.mjs [FOLDER]`, after `npm run build`.

import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const here = import.meta.dirname;
const root = resolve(here, '../..');
const folder = resolve(process.argv[2] ?? join(here, 'records'));
const plant = join(here, 'plant.yaml');

/** One rehearsal, written as `name`. */
function rehearsed(to, name, point, ...flags) {
  const command = [join(root, 'packages/cli/bin/soundpost.js'), 'rehearse', plant, point, ...flags];
  const told = spawnSync(process.execPath, [...command, '--out', join(to, name)], { encoding: 'utf8' });
  if (told.status !== 0) throw new Error(`${command.slice(1).join(' ')}\n${told.stdout}${told.stderr}`);
}

const rest = ['--occasion', 'at-rest', '--seconds', '1', '--rate', '2560'];
const stopped = ['--occasion', 'stopped', '--seconds', '8', '--rate', '5120'];
const taps = ['--occasion', 'taps:10 m/s2 peak', '--seconds', '2.75', '--rate', '20480'];
const calibrated = ['--occasion', 'calibrator:10 m/s2 rms at 159.15 Hz', '--seconds', '2', '--rate', '5120'];
const running = ['--seconds', '16', '--rate', '5120'];

const made = [
  // As designed.
  ['healthy-at-rest.wav', 'fan-drive-end-horizontal', ...rest],
  ['healthy-stopped.wav', 'fan-drive-end-horizontal', ...stopped, '--seed', '2'],
  ['healthy-calibrator.wav', 'fan-drive-end-horizontal', ...calibrated, '--seed', '4'],
  ['healthy-running.wav', 'fan-drive-end-horizontal', ...running, '--seed', '5'],
  // A transducer of 100 mV/g where one of 500 mV/g was designed.
  ['sensitivity-at-rest.wav', 'fan-drive-end-vertical', ...rest, '--seed', '6'],
  ['sensitivity-calibrator.wav', 'fan-drive-end-vertical', ...calibrated, '--defect', 'sensitivity:0.2', '--seed', '7'],
  // A coupling that was not turned home.
  ['loose-taps.wav', 'fan-free-end-horizontal', ...taps, '--defect', 'loose-mount:0.35', '--seed', '8'],
  ['loose-running.wav', 'fan-free-end-horizontal', ...running, '--defect', 'loose-mount:0.35', '--seed', '9'],
  // As designed; what is wrong with it, its card, was read off by hand.
  ['loop-running.wav', 'fan-drive-end-loop', '--seconds', '8', '--rate', '2560', '--seed', '10'],
];

/** Taps beside the first of two points, recorded at both: one WAV of two channels. Exchanged: each called the other. */
function besideFirst(to, name, points, seed, exchanged) {
  const parts = points.map((point, index) => {
    const strength = index === 0 ? 'taps:10 m/s2 peak' : 'taps:1 m/s2 peak';
    rehearsed(to, `${index}.wav`, point, '--occasion', strength, ...taps.slice(2), '--seed', seed);
    return join(to, `${index}.wav`);
  });
  const [a, b] = parts.map((each) => readFileSync(each));
  const data = a.indexOf('data');
  const frames = (a.length - data - 8) / 4;
  const whole = Buffer.alloc(data + 8 + 8 * frames);
  a.copy(whole, 0, 0, data + 4);
  whole.writeUInt32LE(whole.length - 8, 4);
  whole.writeUInt32LE(8 * frames, data + 4);
  const form = a.indexOf('fmt ') + 8;
  whole.writeUInt16LE(2, form + 2);
  whole.writeUInt32LE(8 * a.readUInt32LE(form + 4), form + 8);
  whole.writeUInt16LE(8, form + 12);
  for (let frame = 0; frame < frames; frame++) {
    a.copy(whole, data + 8 + 8 * frame, data + 8 + 4 * frame, data + 12 + 4 * frame);
    b.copy(whole, data + 12 + 8 * frame, data + 8 + 4 * frame, data + 12 + 4 * frame);
  }
  const facts = parts.map((each) => JSON.parse(readFileSync(`${each}.json`, 'utf8')));
  const called = exchanged ? facts.toReversed() : facts;
  const channel = facts.map((each, index) => ({ ...each.channel, name: called[index].channel.name }));
  writeFileSync(join(to, name), whole);
  writeFileSync(join(to, `${name}.json`), `${JSON.stringify({ ...facts[0], channel }, null, 2)}\n`);
  for (const each of parts) for (const end of ['', '.json']) rmSync(`${each}${end}`);
}

const staged = mkdtempSync(join(tmpdir(), 'soundpost-records-'));
for (const [name, point, ...flags] of made) rehearsed(staged, name, point, ...flags);
const pairs = [
  ['healthy-taps.wav', ['fan-drive-end-horizontal', 'fan-drive-end-vertical'], '3', false],
  // Two cables exchanged in the junction box.
  ['pair-taps.wav', ['motor-drive-end-horizontal', 'motor-drive-end-vertical'], '11', true],
];
for (const each of pairs) besideFirst(staged, ...each);
mkdirSync(folder, { recursive: true });
for (const [name] of [...made, ...pairs]) {
  for (const end of ['', '.json']) {
    // From one disk to another a rename is refused.
    writeFileSync(join(folder, `${name}${end}.part`), readFileSync(join(staged, `${name}${end}`)));
    renameSync(join(folder, `${name}${end}.part`), join(folder, `${name}${end}`));
  }
}
rmSync(staged, { recursive: true });
