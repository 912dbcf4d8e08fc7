import { otherThanUtf8 } from '../../encoding.ts';
import type { ByteSource } from '../byte-source.ts';
import {
  type Block,
  framesInBlock,
  mostChannels,
  type OpenRecording,
  type ReadingChoices,
  type RecordingFormat,
  refusedAt,
} from '../open-recording.ts';
import { TextLines } from '../text-lines.ts';
import { ClockColumn } from './clock.ts';
import { fieldNumber, fieldsOf, numberLayout, type PossibleLayout } from './number-layout.ts';
import { clockText, columnsOf, type TextColumns } from './text-columns.ts';
import { textHead } from './text-head.ts';

/** Text in columns: comma, semicolon, tab or spaces between numbers, with or without a head and a time column. */
export const textFormat: RecordingFormat<'text'> = {
  kind: 'text',
  name: 'text in columns',
  recognises: (first) => !first.includes(0),
  open,
};

/** A head is shorter; what has no rows by then is no recording. */
const linesLookedAt = 1000;
const charactersLookedAt = 1024 * 1024;

async function open(source: ByteSource, file: string, choices: ReadingChoices): Promise<OpenRecording> {
  const looks = otherThanUtf8(await source.read(0, 4096));
  if (looks !== undefined) {
    throw refusedAt(file, 'its first bytes', {
      read: looks.what,
      expected: 'text in columns',
      suggestion: looks.instead,
    });
  }
  const lines = await firstLines(source, file);
  const layout = numberLayout(lines, file, choices);
  if (layout.columns > mostChannels) {
    throw refusedAt(file, `line ${layout.start + 1}`, {
      read: `${layout.columns} columns`,
      expected: `at most ${mostChannels}`,
    });
  }
  const head = textHead(lines.slice(0, layout.start), layout.separator, layout.columns);
  const columns = columnsOf(head, layout);
  return {
    recording: {
      form: `text, columns by ${layout.separator}, decimal ${layout.decimal}`,
      channels: columns.channels,
      start: columns.start,
      remarks: head.remarks,
      findings: columns.findings,
    },
    blocks: () => blocks(source, file, layout, columns),
    endsWhereEmpty: true,
  };
}

/** The first lines, without a mark of the byte order; the last is left out where it was not read to its end. */
async function firstLines(source: ByteSource, file: string): Promise<readonly string[]> {
  const text = new TextLines(source, file, 0, charactersLookedAt);
  const lines: string[] = [];
  while (lines.length < linesLookedAt) {
    const line = await text.next();
    if (line === undefined) break;
    lines.push(lines.length === 0 ? withoutMark(line) : line);
  }
  return source.size > charactersLookedAt && lines.length < linesLookedAt ? lines.slice(0, -1) : lines;
}

function withoutMark(line: string): string {
  return line.startsWith('\u00ef\u00bb\u00bf') ? line.slice(3) : line;
}

async function* blocks(
  source: ByteSource,
  file: string,
  layout: PossibleLayout,
  { channels, columnOf, timeColumn, clockColumns, timeFactor }: TextColumns,
): AsyncGenerator<Block> {
  const text = new TextLines(source, file);
  while (text.line < layout.start) await text.next();
  const atOnce = framesInBlock(channels.length + 1);
  const timed = timeColumn !== undefined || clockColumns.length > 0;
  const clock = new ClockColumn();
  let from = 0;
  for (;;) {
    const values = channels.map(() => new Float64Array(atOnce));
    const counts = channels.map(() => 0);
    const times = new Float64Array(timed ? atOnce : 0);
    let rows = 0;
    while (rows < atOnce) {
      const line = text.take();
      if (line === undefined) {
        if (!(await text.more())) break;
        continue;
      }
      const fields = rowOf(text.line === 1 ? withoutMark(line) : line, layout, file, text.line);
      if (fields === undefined) continue;
      for (let channel = 0; channel < channels.length; channel++) {
        const field = fields[columnOf[channel]!] ?? '';
        // A column that has held all it claimed, and is empty now, has ended.
        if (field === '' && from + rows >= (channels[channel]!.claimedSamples ?? Number.POSITIVE_INFINITY)) continue;
        values[channel]![rows] = numberOr(field, layout, file, text.line);
        counts[channel] = rows + 1;
      }
      if (timeColumn !== undefined) {
        times[rows] = numberOr(fields[timeColumn] ?? '', layout, file, text.line) * timeFactor;
      } else if (timed) {
        times[rows] = clock.seconds(clockText(fields, clockColumns));
      }
      rows++;
    }
    if (rows === 0) return;
    const along = times.subarray(0, rows);
    yield {
      from,
      values: values.map((each, index) => each.subarray(0, counts[index])),
      ...(timed ? { along: channels.map(() => along) } : {}),
    };
    from += rows;
  }
}

/** The fields of a row; undefined for an empty line. A row may be shorter than the others, but not longer. */
function rowOf(
  line: string,
  { separator, columns }: PossibleLayout,
  file: string,
  at: number,
): readonly string[] | undefined {
  if (line.trim() === '') return undefined;
  const fields = fieldsOf(line, separator);
  if (fields.length <= columns || fields.slice(columns).every((each) => each === '')) return fields;
  // One more is a remark that somebody wrote beside a row.
  if (fields.length === columns + 1) return fields;
  throw refusedAt(file, `line ${at}`, {
    read: `${fields.length} columns`,
    expected: `${columns} columns, as in the rows above`,
    suggestion: 'Were two files joined, or was the file cut?',
  });
}

function numberOr(field: string, { decimal }: PossibleLayout, file: string, at: number): number {
  const value = fieldNumber(field, decimal);
  if (value !== undefined) return value;
  throw refusedAt(file, `line ${at}`, {
    read: field.slice(0, 60),
    expected: `a number with a decimal ${decimal}`,
    suggestion: 'Was the file cut, joined or written over there? If its numbers are written otherwise: --sign.',
  });
}
