import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bytesOf, refused } from './refused.ts';
import { placeAt, textFile } from './text-file.ts';

const refusedBytes = (bytes: Uint8Array) => refused(() => textFile(bytes, 'plant.yaml'));

/** Lines, to be encoded otherwise. */
const lines = 'title: Pumpe\nnotes: 20 °C\n';
const utf16 = (bigEndian: boolean, mark: boolean) => {
  const text = mark ? `\ufeff${lines}` : lines;
  const bytes = new Uint8Array(2 * text.length);
  for (let i = 0; i < text.length; i++) new DataView(bytes.buffer).setUint16(2 * i, text.charCodeAt(i), !bigEndian);
  return bytes;
};

test('UTF-8 is read, with or without its mark, with LF or CRLF', () => {
  for (const text of ['a: µ\nb: Ω\n', '\ufeffa: µ\nb: Ω\n', 'a: µ\r\nb: Ω\r\n']) {
    expect(textFile(bytesOf(text), 'plant.yaml').text).toBe('a: µ\nb: Ω\n');
  }
});

test('a letter typed in two parts is the same letter as in one, so that names meet', () => {
  expect(textFile(bytesOf('Förderpumpe'.normalize('NFD')), 'plant.yaml').text).toBe('Förderpumpe'.normalize('NFC'));
});

test('50 MB are refused before anything is decoded', () => {
  const { message } = refusedBytes(new Uint8Array(50_000_000).fill(0x61));
  expect(message).toContain('plant.yaml:1:1: ');
  expect(message).toContain("read 'a file of 47.7 MiB', expected at most 16.0 MiB");
});

test.each([
  ['UTF-16 little-endian with its mark', utf16(false, true), 'text in UTF-16, little-endian'],
  ['UTF-16 big-endian with its mark', utf16(true, true), 'text in UTF-16, big-endian'],
  ['UTF-16 little-endian without', utf16(false, false), 'text in UTF-16, little-endian and without its mark'],
  ['UTF-16 big-endian without', utf16(true, false), 'text in UTF-16, big-endian and without its mark'],
  ['UTF-32', Uint8Array.of(0xff, 0xfe, 0, 0, 0x61, 0, 0, 0), 'text in UTF-32'],
  ['a spreadsheet', Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0), 'a ZIP archive or a spreadsheet'],
  ['a recording', bytesOf('RIFF\0\0\0\0WAVE'), 'a RIFF file such as a WAV recording'],
  ['a NUL byte', bytesOf('a: 1\nb: \0\n'), 'a NUL byte at byte 9'],
])('negative: %s is named for what it looks like', (_, bytes, looks) => {
  const { refusals } = refusedBytes(bytes);
  expect(refusals).toHaveLength(1);
  expect(refusals[0]).toMatchObject({ line: 1, column: 1, read: looks, expected: 'a text file in UTF-8' });
  expect(refusals[0]?.suggestion).toBeDefined();
});

test('negative: Latin-1 is refused at the byte, with the letter it probably is', () => {
  const bytes = Uint8Array.from([...bytesOf('title: a\nlimit: 20 '), 0xb0, 0x43, 0x0a]);
  expect(refusedBytes(bytes).message).toBe(
    [
      "plant.yaml:2:11: read 'byte B0', expected a text file in UTF-8. In Windows-1252 (Latin-1) the byte is '°': save the file as UTF-8.",
      '    2 | limit: 20 °C',
      '                  ^',
    ].join('\n'),
  );
});

test('negative: a file cut off inside a character says so', () => {
  expect(refusedBytes(bytesOf('a: µ').subarray(0, 4)).message).toContain('The file ends inside a character');
});

test.each([
  ['a\u202eb: 1', 2, 'U+202E', 'changes how the text beside it is shown'],
  ['a: \u2066x', 4, 'U+2066', 'changes how the text beside it is shown'],
  ['a: \u001b[2J', 4, 'U+001B', 'control character'],
  ['a: \u0085', 4, 'U+0085', 'control character'],
  ['a: x\u200b', 5, 'U+200B', 'no width'],
  ['a: x\ufeff', 5, 'U+FEFF', 'no width'],
  ['a: 1\rb: 2', 5, 'U+000D', 'carriage return'],
  ['a: 1\u2028b: 2', 5, 'U+2028', 'line separator'],
])('negative: what is not seen is refused with its place: %j', (text, column, read, about) => {
  const [refusal] = refusedBytes(bytesOf(text)).refusals;
  expect(refusal).toMatchObject({ line: 1, column, read });
  expect(refusal?.suggestion).toContain(about);
});

test('a tab, an accent, Arabic, Chinese and an emoji of several characters are seen', () => {
  const text = 'a:\té مضخة 泵 👷🏽‍♀️';
  expect(textFile(bytesOf(text), 'plant.yaml').text).toBe(text);
});

test('negative: a flood of combining marks is refused before composing it takes the day', { timeout: 30_000 }, () => {
  expect(refusedBytes(bytesOf(`a: x${'\u0301\u0316'.repeat(2_000_000)}`)).message).toContain('More than 30 marks');
});

test('law: whatever the bytes, there comes a text that can be shown, or a refusal with a place', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 60 }), (bytes) => {
      let text: string;
      try {
        text = textFile(bytes, 'plant.yaml').text;
      } catch {
        const [refusal] = refusedBytes(bytes).refusals;
        expect(refusal!.line).toBeGreaterThanOrEqual(1);
        expect(refusal!.column).toBeGreaterThanOrEqual(1);
        return;
      }
      expect(text).not.toMatch(/(?![\n\t])\p{Cc}/u);
    }),
    { numRuns: 2000 },
  );
});

test('law: the place of the first byte that is no UTF-8 is where the strict decoder of the platform stops too', () => {
  const strict = (bytes: Uint8Array) => {
    try {
      new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
      return true;
    } catch {
      return false;
    }
  };
  const bytes = fc.array(
    fc.constantFrom(0x61, 0x7f, 0x80, 0xa0, 0xbf, 0xc1, 0xc2, 0xe0, 0xe2, 0xed, 0xef, 0xf0, 0xf4, 0xf5),
  );
  fc.assert(
    fc.property(bytes, (list) => {
      const whole = Uint8Array.from(list);
      fc.pre(!strict(whole));
      const [refusal] = refusedBytes(whole).refusals;
      const before = new TextEncoder().encode(new TextDecoder().decode(whole).slice(0, refusal!.column - 1)).length;
      expect(strict(whole.subarray(0, before))).toBe(true);
      expect(refusal!.read).toBe(`byte ${whole[before]!.toString(16).toUpperCase()}`);
    }),
    { numRuns: 2000 },
  );
});

test('law: the place of an offset counts the line ends before it', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('a', 'µ', '\n')), fc.nat(), (letters, at) => {
      const text = textFile(bytesOf(letters.join('')), 'plant.yaml');
      const offset = at % (text.text.length + 1);
      const before = text.text.slice(0, offset).split('\n');
      expect(placeAt(text, offset)).toEqual({ line: before.length, column: before.at(-1)!.length + 1, path: '' });
    }),
  );
});
