import { Refusal } from '@soundpost/core';

/** A workbook of ours has some ten parts; one of an office program some dozens. */
const mostEntries = 500;
/** All parts together, unpacked. */
const mostUnpacked = 64 * 1024 * 1024;

/**
 * Refuses an archive that is none, that holds too much, or that says less of itself than it holds: every part is unpacked
 * once, bounded, before any reader sees it. ZIP, APPNOTE 6.3, end of central directory and file headers; from memory.
 */
export async function refuseUnbounded(bytes: Uint8Array): Promise<void> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOfDirectory(view);
  const entries = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (entries > mostEntries) throw tooMuch(`an archive of ${entries} parts`, `at most ${mostEntries} parts`);
  let left = mostUnpacked;
  for (let entry = 0; entry < entries; entry++) {
    if (at + 46 > view.byteLength || view.getUint32(at, true) !== 0x02014b50) throw broken();
    const [method, packed, unpacked] = [
      view.getUint16(at + 10, true),
      view.getUint32(at + 20, true),
      view.getUint32(at + 24, true),
    ];
    const local = view.getUint32(at + 42, true);
    if (unpacked > left) throw tooMuch('a workbook that unpacks to more', 'at most 64 MiB unpacked');
    left -= await unpackedLength(bytes, view, { method, packed, local, most: left });
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
}

interface PackedPart {
  readonly method: number;
  readonly packed: number;
  readonly local: number;
  readonly most: number;
}

async function unpackedLength(
  bytes: Uint8Array,
  view: DataView,
  { method, packed, local, most }: PackedPart,
): Promise<number> {
  if (local + 30 > view.byteLength || view.getUint32(local, true) !== 0x04034b50) throw broken();
  const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  if (from + packed > view.byteLength) throw broken();
  if (method === 0) return packed;
  if (method !== 8) throw broken();
  const packedPart = new Blob([bytes.slice(from, from + packed)]);
  const reader = packedPart.stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  let length = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return length;
      length += value.length;
      if (length > most) break;
    }
  } catch {
    throw broken();
  }
  await reader.cancel().catch(() => undefined);
  throw tooMuch('a workbook that unpacks to more than it says', 'at most 64 MiB unpacked');
}

function endOfDirectory(view: DataView): number {
  const first = Math.max(0, view.byteLength - 22 - 0xffff);
  for (let at = view.byteLength - 22; at >= first; at--) if (view.getUint32(at, true) === 0x06054b50) return at;
  throw broken();
}

function broken(): Refusal {
  return new Refusal({
    read: 'a file that is no whole workbook',
    expected: 'an XLSX workbook, or a table as text with the name .csv',
    suggestion: 'Save it again from the spreadsheet, without a password.',
  });
}

function tooMuch(read: string, expected: string): Refusal {
  return new Refusal({ read, expected, suggestion: 'Keep only the exported table in it.' });
}
