/** What bytes that are not text in UTF-8 look like, and what to do about it. */
export interface Looks {
  readonly what: string;
  readonly instead: string;
}

const signatures: readonly (readonly [name: string, ...start: number[]])[] = [
  ['a ZIP archive or a spreadsheet', 0x50, 0x4b, 0x03, 0x04],
  ['a PDF document', 0x25, 0x50, 0x44, 0x46, 0x2d],
  ['a gzip archive', 0x1f, 0x8b],
  ['an old spreadsheet or text-processor document', 0xd0, 0xcf, 0x11, 0xe0],
  ['a RIFF file such as a WAV recording', 0x52, 0x49, 0x46, 0x46],
  ['a PNG picture', 0x89, 0x50, 0x4e, 0x47],
  ['a JPEG picture', 0xff, 0xd8, 0xff],
];

/** What the bytes look like where their start or a NUL byte says that they are not UTF-8 text. */
export function otherThanUtf8(bytes: Uint8Array): Looks | undefined {
  const starts = (...start: readonly number[]) => start.every((byte, index) => bytes[index] === byte);
  const utf16 = (order: string) => ({ what: `text in UTF-16, ${order}`, instead: 'Save the file as UTF-8.' });
  const signature = signatures.find(([, ...start]) => starts(...start));
  if (signature !== undefined) return { what: signature[0], instead: 'Export what it says as UTF-8 text.' };
  if (starts(0xff, 0xfe, 0, 0) || starts(0, 0, 0xfe, 0xff)) {
    return { what: 'text in UTF-32', instead: 'Save the file as UTF-8.' };
  }
  if (starts(0xff, 0xfe)) return utf16('little-endian');
  if (starts(0xfe, 0xff)) return utf16('big-endian');
  const first = bytes.indexOf(0);
  if (first < 0) return undefined;
  const beginning = bytes.subarray(0, 1024);
  const nuls = [0, 0];
  beginning.forEach((byte, index) => {
    if (byte === 0) nuls[index % 2]!++;
  });
  const most = beginning.length * 0.3;
  if (nuls[1]! > most && nuls[0] === 0) return utf16('little-endian and without its mark');
  if (nuls[0]! > most && nuls[1] === 0) return utf16('big-endian and without its mark');
  return {
    what: `a NUL byte at byte ${first + 1}`,
    instead: 'It looks like a binary file, or like one that was damaged on the way.',
  };
}

/** The first byte that does not belong to well-formed UTF-8 (Unicode, table 3-7; from memory). */
export function firstInvalid(bytes: Uint8Array): number {
  let at = 0;
  while (at < bytes.length) {
    const length = characterLength(bytes, at);
    if (length === 0) return at;
    at += length;
  }
  return at;
}

function characterLength(bytes: Uint8Array, at: number): number {
  const first = bytes[at]!;
  const within = (offset: number, low = 0x80, high = 0xbf) => {
    const byte = bytes[at + offset];
    return byte !== undefined && byte >= low && byte <= high;
  };
  if (first < 0x80) return 1;
  if (first >= 0xc2 && first <= 0xdf) return within(1) ? 2 : 0;
  if (first >= 0xe0 && first <= 0xef) {
    const second = first === 0xe0 ? within(1, 0xa0) : first === 0xed ? within(1, 0x80, 0x9f) : within(1);
    return second && within(2) ? 3 : 0;
  }
  if (first >= 0xf0 && first <= 0xf4) {
    const second = first === 0xf0 ? within(1, 0x90) : first === 0xf4 ? within(1, 0x80, 0x8f) : within(1);
    return second && within(2) && within(3) ? 4 : 0;
  }
  return 0;
}
