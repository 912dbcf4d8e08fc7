import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../../quantity/index.ts';
import { compared } from '../../working/printed.ts';
import { calculate } from '../../working/working.ts';
import { bitsAt, bytesOf } from './bits.ts';
import { byteList } from './byte-list.ts';
import { entryFromTeds, namesCalibration } from './catalogue-entry.ts';
import { constantRelative, constantStep, counted, daysSince1998, fiveBitLetters, singlePrecision } from './coding.ts';
import { accelerometerStream, tedsEvidence, transferFunctionStream, voltageStream } from './evidence.ts';
import { pageChecksums } from './page-checksums.ts';
import { type TedsValues, tedsBytes, tedsOf, toldOf } from './teds.ts';
import { templateKinds } from './templates/kinds.ts';
import { tedsWorking } from './working.ts';

const read = (text: string) => tedsOf(byteList(text).bytes);
const resultsOf = (bytes: string) =>
  new Map(calculate(tedsWorking, { bytes }).results.map(({ name, json }) => [name, json]));
const refusal = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  return 'was read';
};

test('printed: streams of two public libraries read as they say', () => {
  for (const each of tedsEvidence) {
    for (const { output, ours, printed, within } of compared(each))
      expect(within, `${output} ${ours} ${printed}`).toBe(true);
  }
  // Texts, asserted or shown by the same sources: the version letter A, the measurand in kelvin.
  expect(resultsOf(voltageStream).get('version-letter')).toBe('A');
  expect(resultsOf(voltageStream).get('measurand')).toMatch(/K$/);
});

test('printed: every field of the accelerometer stream stands where the check values put it', () => {
  const places = Object.fromEntries(
    read(accelerometerStream).told.map(({ name, from, bits }) => [name, [from, from + bits - 1]]),
  );
  expect(places).toMatchObject({
    manufacturer: [0, 13],
    serial: [40, 63],
    selector: [64, 65],
    template: [66, 73],
    senses: [74, 74],
    'extended-functionality': [75, 75],
    sensitivity: [76, 91],
    'high-pass-corner': [92, 99],
    direction: [100, 101],
    weight: [102, 107],
    polarity: [108, 108],
    'transfer-function': [109, 109],
    'reference-frequency': [110, 117],
    'reference-temperature': [118, 122],
    'calibration-date': [123, 138],
    'calibration-initials': [139, 153],
    'calibration-period': [154, 165],
    'measurement-location': [166, 176],
    'end-selector': [177, 178],
  });
  const teds = read(accelerometerStream);
  expect(teds.bitsRead).toBe(179);
  const told = (name: string) => teds.told.find((each) => each.name === name)!;
  expect(told('end-selector').code).toBe(3);
  expect(told('sensitivity').code).toBe(53735);
  expect(told('sensitivity').value).toBeCloseTo(4.999934, 6);
});

test('trap: the power is the code of the field, not the number of the template, as a public decoder has it', () => {
  const wrong = 5e-7 * 1.0003 ** 25;
  const right = toldOf(read(accelerometerStream), 'sensitivity') as number;
  expect(right / wrong).toBeGreaterThan(9e6);
});

test('printed: the ends of the published ranges come out with all ones reserved', () => {
  expect(constantRelative(5e-7, 0.00015).decode(65534, 16)!.toFixed(2)).toBe('172.19');
  expect(constantRelative(0.005, 0.03).decode(254, 8)!.toFixed(0)).toBe('13386');
  expect(constantRelative(5e-7, 0.00015).decode(65535, 16)).toBeUndefined();
});

test('law: every one of the 65 535 codes of the sensitivity comes back, and so does any value within 0.015 %', () => {
  const coding = constantRelative(5e-7, 0.00015);
  const changed = Array.from({ length: 65535 }, (_, code) => code).filter(
    (code) => coding.encode(coding.decode(code, 16), 16) !== code,
  );
  expect(changed).toEqual([]);
  fc.assert(
    fc.property(fc.double({ min: Math.log(5e-7), max: Math.log(172.18), noNaN: true }), (logarithm) => {
      const value = Math.exp(logarithm);
      const back = coding.decode(coding.encode(value, 16), 16)!;
      expect(Math.abs(back / value - 1)).toBeLessThanOrEqual(0.00015 * (1 + 1e-9));
    }),
  );
});

test('law: the other codings come back, code by code', () => {
  const all = (bits: number) => Array.from({ length: 2 ** bits }, (_, code) => code);
  for (const code of all(7)) {
    const coding = constantStep(-6.3, 0.1);
    expect(coding.encode(coding.decode(code, 7), 7)).toBe(code);
  }
  for (const code of all(16)) expect(daysSince1998.encode(daysSince1998.decode(code, 16), 16)).toBe(code);
  for (const code of all(12)) expect(counted(86400).encode(counted(86400).decode(code, 12), 12)).toBe(code);
  fc.assert(
    fc.property(fc.stringMatching(/^[A-Z]{1,3}$/), (text) => {
      expect(fiveBitLetters.decode(fiveBitLetters.encode(text, 15), 15)).toBe(text);
    }),
  );
  fc.assert(
    fc.property(fc.float({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(singlePrecision.decode(singlePrecision.encode(value, 32), 32)).toBe(value);
    }),
  );
});

test('independent: the days of the calendar agree with the calendar of the language, for every code', () => {
  // biome-ignore lint/style/noRestrictedGlobals: the calendar of the language is the other opinion; no clock is read
  const calendar = (code: number) => new Date(Date.UTC(1998, 0, 1 + code)).toISOString().slice(0, 10);
  const differing = Array.from({ length: 65535 }, (_, code) => code).filter(
    (code) => daysSince1998.decode(code, 16) !== calendar(code),
  );
  expect(differing).toEqual([]);
});

test('law: what is written into bits is read from there', () => {
  const run = fc
    .integer({ min: 1, max: 32 })
    .chain((bits) => fc.integer({ min: 0, max: 2 ** bits - 1 }).map((code) => ({ code, bits })));
  fc.assert(
    fc.property(fc.array(run, { maxLength: 20 }), (runs) => {
      const bytes = bytesOf(runs);
      let at = 0;
      for (const { code, bits } of runs) {
        expect(bitsAt(bytes, at, bits)).toBe(code);
        at += bits;
      }
    }),
  );
});

const valuesOf = (text: string): TedsValues =>
  Object.fromEntries(read(text).told.map(({ name, value }) => [name, value]));

test('law: a data sheet that was read is written back to the same bits', () => {
  for (const stream of [accelerometerStream, transferFunctionStream, voltageStream]) {
    const { bytes } = byteList(stream);
    const teds = tedsOf(bytes);
    const written = tedsBytes(teds.template!.id, valuesOf(stream));
    expect(8 * written.length).toBeGreaterThanOrEqual(teds.bitsRead);
    for (let bit = 0; bit < teds.bitsRead; bit++)
      expect(bitsAt(written, bit, 1), `bit ${bit}`).toBe(bitsAt(bytes, bit, 1));
  }
});

test('negative: a value no code stands for, a field left out and a layout not known are not written', () => {
  const values = valuesOf(accelerometerStream);
  expect(refusal(() => tedsBytes(25, { ...values, sensitivity: 200 }))).toMatch(/from 5e-7 to 172\.1/);
  expect(refusal(() => tedsBytes(25, { ...values, sensitivity: -1 }))).toMatch(/from 5e-7/);
  expect(refusal(() => tedsBytes(25, { ...values, serial: 2 ** 24 }))).toMatch(/0 to 16777215/);
  expect(refusal(() => tedsBytes(25, { ...values, 'calibration-initials': 'ABCD' }))).toMatch(/3 capital letters/);
  expect(refusal(() => tedsBytes(25, { ...values, 'calibration-date': '2026-02-30' }))).toMatch(/year-month-day/);
  expect(refusal(() => tedsBytes(25, { ...values, direction: 'w' }))).toMatch(/one of: x, y, z, none/);
  expect(refusal(() => tedsBytes(25, { ...values, senses: 'force' }))).toMatch(/layout is known/);
  const { weight: _, ...without } = values;
  expect(refusal(() => tedsBytes(25, without))).toMatch(/'weight'/);
  expect(refusal(() => tedsBytes(27, values))).toMatch(/layout is known/);
});

test('negative: bytes cut off are refused with the field that is missing, wherever the cut is', () => {
  const { bytes } = byteList(accelerometerStream);
  for (let kept = 0; kept < bytes.length; kept++) {
    const sentence = refusal(() => tedsOf(bytes.slice(0, kept)));
    if (kept === 8) expect(sentence).toBe('was read');
    else expect(sentence, String(kept)).toMatch(/cut off before it ends/);
  }
  expect(refusal(() => tedsOf(bytes.slice(0, 20)))).toMatch(
    /20 bytes \(160 bits\).*'calibration-period' of template 25 in bits 154 to 165/,
  );
  expect(tedsOf(bytes.slice(0, 8)).notKnown.join()).toMatch(/bytes end with the basic part/);
});

const bytesWith = (changed: Readonly<Record<string, number>>) =>
  bytesOf(read(accelerometerStream).told.map(({ name, code, bits }) => ({ code: changed[name] ?? code, bits })));

test('negative: what is not known here is named field by field and nothing is guessed', () => {
  const force = tedsOf(bytesWith({ senses: 1 }));
  expect(force.notKnown.join()).toMatch(/force sensitivity/);
  expect(toldOf(force, 'sensitivity')).toBeUndefined();
  expect(tedsOf(bytesWith({ 'extended-functionality': 1 })).notKnown.join()).toMatch(/switchable/);
  const microphone = tedsOf(bytesWith({ template: 27 }));
  expect(microphone.template).toEqual({ id: 27, name: 'Microphone with built-in preamplifier' });
  expect(microphone.notKnown).toContain('sensitivity');
  expect(microphone.bitsRead).toBe(74);
  expect(tedsOf(bytesWith({ template: 33 })).notKnown).toEqual(['every field of template 33']);
  expect(tedsOf(bytesWith({ selector: 2 })).notKnown).toEqual(['what follows selector 2']);
  expect(tedsOf(bytesWith({ selector: 3 })).notKnown).toEqual([]);
  const pressure = byteList(voltageStream).bytes.map((byte, k) => (k === 9 ? byte | 0x04 : byte));
  expect(toldOf(tedsOf(pressure), 'physical-minimum')).toBeUndefined();
  expect(new Set(templateKinds.map(({ id }) => id)).size).toBe(templateKinds.length);
});

test('negative: the layout of draft 0.9 is refused, with what it would be', () => {
  const draft = bytesOf([
    { code: 40, bits: 12 },
    { code: 4000, bits: 16 },
    { code: 2, bits: 5 },
    { code: 3, bits: 6 },
    { code: 9999, bits: 24 },
    { code: 0b1001, bits: 33 },
  ]);
  const otherwise = draft.map((byte, k) => (k === 8 ? byte | 2 : byte));
  expect(tedsOf(otherwise).notKnown.join()).toMatch(/selector 2, unless .* draft 0\.9: then it is manufacturer 40/);
  expect(refusal(() => tedsOf(draft))).toMatch(/draft 0\.9.*manufacturer 40, model 4000, version B3/);
  expect(refusal(() => tedsOf(bytesWith({ template: 0 })))).toMatch(/template number would be 0/);
  expect(refusal(() => tedsOf(bytesWith({ 'version-letter': 31 })))).toMatch(/version letter has code 31/);
});

test('the notation of the bytes is told and does not change what is read', () => {
  const { bytes } = byteList(accelerometerStream);
  const hexadecimal = bytes.map((byte) => byte.toString(16).padStart(2, '0'));
  for (const text of [hexadecimal.join(''), hexadecimal.map((each) => `0x${each}`).join(', '), bytes.join(', ')]) {
    expect(byteList(text).bytes).toEqual(bytes);
  }
  expect(byteList('10 20 30').bytes).toEqual([16, 32, 48]);
  expect(byteList('10, 20, 30').bytes).toEqual([10, 20, 30]);
  expect(byteList('17 64 0 32')).toEqual({ bytes: [17, 64, 0, 32], notation: 'decimal', certain: false });
  expect(resultsOf(voltageStream).get('notation')).toBe('decimal');
});

test('negative: hostile bytes are refused in one short sentence', () => {
  const said = (text: string) => refusal(() => byteList(text));
  expect(said('ABCDE')).toMatch(/'ABCDE' has 5 digits: a byte has two, so one is missing/);
  expect(said('64 70 1E 0')).toMatch(/'0' has 1 digits/);
  expect(said('64 7G')).toMatch(/'G' is no digit/);
  expect(said('0x')).toMatch(/no hexadecimal number/);
  expect(said('1, 2, 256')).toMatch(/above 255/);
  expect(said('-1, 2')).toMatch(/'-' is no digit/);
  expect(said('')).toMatch(/read nothing/);
  expect(said(' , ')).toMatch(/at most 4096 bytes/);
  expect(said('00'.repeat(5000))).toMatch(/5000 bytes/);
  expect(said('f'.repeat(1e6))).toMatch(/1000000 characters/);
  expect(said('\u001b[31m').length).toBeLessThan(300);
  // 10 kB of text is read where it is a list of bytes.
  expect(refusal(() => read(`${accelerometerStream} ${'00 '.repeat(3300)}`))).toBe('was read');
  expect(refusal(() => read('FF'.repeat(4096)))).toMatch(/version letter has code 31/);
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 255 }), { maxLength: 60 }), (bytes) => {
      const text = bytes.map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
      expect(() => refusal(() => resultsOf(text))).not.toThrow();
    }),
  );
});

test('sums of the pages are told and demanded of nobody', () => {
  const page = [...byteList(accelerometerStream).bytes, ...new Array<number>(9).fill(0)];
  const sum = page.reduce((total, byte) => total + byte, 0);
  page[31] = 256 - (sum % 256);
  expect(pageChecksums(page)).toMatch(/^page 1: sum 0, exclusive or [1-9]/);
  expect(pageChecksums([...page, ...page])).toMatch(/page 2: sum 0/);
  expect(pageChecksums(page.slice(1))).toBeUndefined();
  expect(tedsOf(page).template!.id).toBe(25);
});

test('a catalogue entry states what the memory states, and a certificate only beside a calibration date', () => {
  const blank = entryFromTeds(read(accelerometerStream), 'from memory')!;
  expect(blank.part.sheet.values.sensitivity).toMatchObject({ status: 'nameplate', source: 'TEDS' });
  expect(blank.states).toEqual(['sensitivity']);
  expect(blank.left.join()).toMatch(/weight: it has the lowest code/);
  expect(blank.missing).toEqual(expect.arrayContaining(['range', 'mounted resonance', 'bias', 'noise', 'low corner']));
  expect(blank.part.sheet.values.range).toEqual({ known: false });

  const dated = tedsOf(bytesWith({ 'calibration-date': 10000, weight: 21, 'high-pass-corner': 67 }));
  expect(namesCalibration(dated)).toBe(true);
  const { part } = entryFromTeds(dated, 'from memory')!;
  expect(part.sheet.values.sensitivity).toMatchObject({ status: 'certificate' });
  expect(part.sheet.values.lowCorner).toMatchObject({ known: true, status: 'nameplate' });
  expect(part.sheet.values.mass).toMatchObject({ known: true, value: expect.closeTo(0.0046005, 7) });
  expect(namesCalibration(tedsOf(bytesWith({ 'calibration-date': 65535 })))).toBe(false);
  expect(entryFromTeds(tedsOf(bytesWith({ 'calibration-date': 65535, sensitivity: 65535 })), 'x')).toBeUndefined();
  expect(entryFromTeds(read(voltageStream), 'x')).toBeUndefined();
  const tuned = entryFromTeds(read(transferFunctionStream), 'x')!;
  expect(tuned.left.join()).toMatch(/resonance: on which mount/);
});

test('doubts: a reserved manufacturer and fields that may be unwritten are said beside the result', () => {
  const rules = (bytes: string) => calculate(tedsWorking, { bytes }).findings.map(({ rule }) => rule);
  expect(rules(accelerometerStream)).toEqual(['teds/manufacturer', 'teds/unwritten']);
  expect(rules(voltageStream)).toEqual([]);
  expect(rules('17 64 20 20 14 57 48 10')).toEqual(['teds/notation']);
});
