import type { Finding } from '@soundpost/core';
import type { ByteSource } from '../byte-source.ts';
import { headAgainstItself, lengthAgainstFile } from '../contradictions.ts';
import { mostChannels, refusedAt } from '../open-recording.ts';
import { charactersOf, TextLines } from '../text-lines.ts';
import { byteWidths, lineWidths, partsOf, sum } from './data-widths.ts';
import { binaryFormOf, type Dataset58, dataset58, headLines } from './dataset-58.ts';

/** A dataset 58 and where its values stand in the file. */
export interface PlacedDataset {
  readonly head: Dataset58;
  readonly from: number;
  readonly end: number;
  /** Values that stand there. */
  readonly samples: number;
  /** Bytes of each part of one value, in a binary dataset. */
  readonly widths?: readonly number[];
  readonly findings: readonly Finding[];
}

/** Sets of other numbers are passed over; a file of nothing but marks would otherwise be walked for hours. */
const mostDatasets = 100_000;

export interface UniversalIndex {
  readonly datasets: readonly PlacedDataset[];
  /** Numbers of datasets that were passed over. */
  readonly others: ReadonlyMap<string, number>;
}

/** Walks the file once, holding one piece of it, and finds every dataset 58. Throws Refusal. */
export async function universalIndex(source: ByteSource, file: string): Promise<UniversalIndex> {
  const datasets: PlacedDataset[] = [];
  const others = new Map<string, number>();
  let lines = new TextLines(source, file);
  for (let seen = 0; ; seen++) {
    if (seen > mostDatasets) {
      throw refusedAt(file, `line ${lines.line}`, {
        read: 'another dataset',
        expected: `at most ${mostDatasets} datasets`,
      });
    }
    if (!(await passMark(lines))) return { datasets, others };
    const name = await lines.next();
    if (name === undefined) return { datasets, others };
    if (!/^ *58b?\b/i.test(name)) {
      const number = name.trim().slice(0, 6);
      others.set(number, (others.get(number) ?? 0) + 1);
      await passMark(lines);
      continue;
    }
    if (datasets.length >= mostChannels) {
      throw refusedAt(file, `line ${lines.line}`, {
        read: 'another dataset 58',
        expected: `at most ${mostChannels} of them`,
      });
    }
    const binary = binaryFormOf(name, file, lines.line);
    const at = lines.line + 1;
    const head = dataset58(await headOf(lines, file), file, at, binary);
    if (binary === undefined) {
      datasets.push(await textDataset(lines, head, file));
    } else {
      const placed = await binaryDataset(source, lines.place, head, file);
      datasets.push(placed);
      const before = lines.line;
      lines = new TextLines(source, file, placed.end);
      lines.line = before;
      await passMark(lines);
    }
  }
}

/** Passes over lines up to and with the next `-1`; false at the end of the file. */
async function passMark(lines: TextLines): Promise<boolean> {
  for (;;) {
    const line = lines.take();
    if (line === undefined) {
      if (!(await lines.more())) return false;
    } else if (isMark(line)) {
      return true;
    }
  }
}

function isMark(line: string): boolean {
  return /^ {0,8}-1\s*$/.test(line);
}

async function headOf(lines: TextLines, file: string): Promise<readonly string[]> {
  const head: string[] = [];
  while (head.length < headLines) {
    const line = await lines.next();
    if (line === undefined || isMark(line)) {
      throw refusedAt(file, `line ${lines.line}`, {
        read: `${head.length} lines of a dataset 58`,
        expected: `its ${headLines} lines of description`,
        suggestion: 'The file may have been cut off.',
      });
    }
    head.push(line);
  }
  return head;
}

async function textDataset(lines: TextLines, head: Dataset58, file: string): Promise<PlacedDataset> {
  const from = lines.place;
  const widths = lineWidths(head);
  const full = sum(widths);
  let [numbers, end, marked] = [0, from, false];
  for (;;) {
    const line = lines.take();
    if (line === undefined) {
      if (!(await lines.more())) break;
      continue;
    }
    if (isMark(line)) {
      marked = true;
      break;
    }
    numbers += line.length === full ? widths.length : numbersIn(line, widths).length;
    end = lines.place;
  }
  const there = Math.floor(numbers / partsOf(head).length);
  const samples = Math.min(there, head.count);
  return {
    head,
    from,
    end,
    samples,
    findings: [
      ...(there === head.count ? [] : [lengthAgainstFile(file, 'values of a dataset 58', head.count, there)]),
      ...(marked ? [] : [headAgainstItself(file, "a dataset 58 ends without its '-1'", "'-1' after each dataset")]),
    ],
  };
}

/** The texts of the numbers in a line: by their places, or between spaces where a writer did not keep to the places. */
export function numbersIn(line: string, widths: readonly number[]): readonly string[] {
  const byPlace: string[] = [];
  let at = 0;
  for (const width of widths) {
    const text = line.slice(at, at + width).trim();
    if (text !== '') byPlace.push(text);
    at += width;
  }
  if (byPlace.every((each) => !/\s/.test(each)) && line.slice(at).trim() === '') return byPlace;
  return line.trim().split(/\s+/);
}

async function binaryDataset(source: ByteSource, from: number, head: Dataset58, file: string): Promise<PlacedDataset> {
  const claimed = head.binary!.bytes;
  const choices = byteWidths(head);
  const fits = choices.find((widths) => head.count * sum(widths) === claimed);
  const widths = fits ?? (await markedAfter(source, from, head.count, choices)) ?? choices[0]!;
  const wanted = head.count * sum(widths);
  const there = Math.min(wanted, Math.max(0, source.size - from));
  const samples = Math.floor(there / sum(widths));
  const end = from + samples * sum(widths);
  return {
    head,
    from,
    end,
    samples,
    widths,
    findings: [
      ...(fits === undefined
        ? [
            headAgainstItself(
              file,
              `a dataset 58b claims ${claimed} bytes`,
              `${wanted} by the number and type of its values`,
            ),
          ]
        : []),
      ...(samples < head.count ? [lengthAgainstFile(file, 'values of a dataset 58b', head.count, samples)] : []),
    ],
  };
}

async function markedAfter(source: ByteSource, from: number, count: number, choices: readonly (readonly number[])[]) {
  for (const widths of choices) {
    const after = charactersOf(await source.read(from + count * sum(widths), 12));
    if (/^\s*-1\s/.test(`${after} `)) return widths;
  }
  return undefined;
}
