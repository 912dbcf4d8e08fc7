import {
  type Abscissa,
  type Finding,
  notStated,
  type QuantityName,
  quantities,
  type RecordedChannel,
  sameDimension,
  si,
  stated,
} from '@soundpost/core';
import { type ByteSource, pieceLength } from '../byte-source.ts';
import { headAgainstItself, unitAgainstKind } from '../contradictions.ts';
import { type Block, framesInBlock, type OpenRecording, type RecordingFormat, refusedAt } from '../open-recording.ts';
import { recordedUnit } from '../recorded-unit.ts';
import { silentChannel } from '../silent-channel.ts';
import { charactersOf } from '../text-lines.ts';
import { viewOf } from '../wav/riff-chunks.ts';
import { sum } from './data-widths.ts';
import { type Dataset58, functionNames } from './dataset-58.ts';
import { type PlacedDataset, universalIndex } from './universal-index.ts';
import { valueCursor } from './universal-values.ts';

/** Universal File: every dataset 58 or 58b of it is one channel. */
export const universalFormat: RecordingFormat<'universal-file'> = {
  kind: 'universal-file',
  name: 'Universal File, dataset 58',
  recognises: (first) => /^\s* {0,8}-1\s*\r?\n *\d{2,6}/.test(charactersOf(first.subarray(0, 200))),
  open,
};

async function open(source: ByteSource, file: string): Promise<OpenRecording> {
  const { datasets, others } = await universalIndex(source, file);
  if (datasets.length === 0) {
    throw refusedAt(file, 'the whole of it', {
      read: `datasets ${[...others.keys()].slice(0, 10).join(', ')}`,
      expected: 'a dataset 58 or 58b: functions at nodes',
    });
  }
  const channels: RecordedChannel[] = [];
  const findings: Finding[] = [];
  for (const [index, placed] of datasets.entries()) {
    const channel = channelOf(placed, index);
    channels.push(channel);
    findings.push(...placed.findings, ...kindDoubt(placed.head, channel));
    findings.push(...(await byteOrderDoubt(source, placed, channel)));
  }
  const when = datasets[0]!.head.idLines[2]!;
  const passedOver = [...others].map(([number, count]) => (count === 1 ? number : `${number} (${count} times)`));
  return {
    recording: {
      form: `Universal File, ${formsOf(datasets)}`,
      channels,
      start: /\d{1,2}-\w{3}-\d{2,4}/.test(when) ? stated(when, when) : notStated,
      remarks: [
        ...remarksOf(datasets[0]!.head),
        ...(passedOver.length === 0 ? [] : [{ name: 'datasets passed over', text: passedOver.join(', ') }]),
      ],
      findings,
    },
    blocks: () => blocks(source, file, datasets),
  };
}

function formsOf(datasets: readonly PlacedDataset[]): string {
  const forms = datasets.map(({ head }) => {
    const order = head.binary === undefined ? 'text' : head.binary.littleEndian ? 'little-endian' : 'big-endian';
    const numbers = `${head.complex ? 'complex' : 'real'} ${head.double ? 'double' : 'single'} precision`;
    return `dataset 58${head.binary === undefined ? '' : 'b'} of ${numbers}, ${order}`;
  });
  return [...new Set(forms)].join('; ');
}

function remarksOf({ idLines }: Dataset58) {
  return idLines.flatMap((text, index) => (text === '' ? [] : [{ name: `line ${index + 1}`, text }]));
}

const directions = ['', 'X', 'Y', 'Z', 'about X', 'about Y', 'about Z'];

/** Specific data types of the format, where they are a quantity of the trade. */
const kindsOfOrdinate: Readonly<Record<number, QuantityName>> = {
  8: 'displacement',
  9: 'force',
  11: 'velocity',
  12: 'acceleration',
  13: 'force',
  16: 'mass',
};

const kindsOfAbscissa: Readonly<Record<number, Abscissa['of']>> = {
  17: 'time',
  18: 'frequency',
  19: 'rotational speed',
  20: 'order',
};

function channelOf({ head, samples }: PlacedDataset, index: number): RecordedChannel {
  const name = nameOf(head);
  const of = kindsOfAbscissa[head.abscissa.specificType] ?? 'unknown';
  const axis = recordedUnit(head.abscissa.unit).unit;
  // The format writes times in seconds; an axis that is labelled otherwise leaves open which of the two was meant.
  const labelled = of === 'time' && axis.known && axis.value.factor !== 1;
  const inTime = of === 'time' && head.even && head.step > 0 && !labelled;
  const function_ = functionNames[head.functionType] ?? `function ${head.functionType}`;
  const { unit, heard } = unitOf(head);
  const silent = silentChannel(index);
  return {
    ...silent,
    of: name === '' ? silent.of : `${silent.of}, ${name}`,
    name: name === '' ? notStated : stated(name, name),
    rate: inTime ? stated(si('frequency', 1 / head.step), `one every ${head.step} s`) : notStated,
    unit,
    samples,
    claimedSamples: head.count,
    complex: head.complex,
    abscissa: { of: labelled ? 'unknown' : of, even: head.even, first: head.first, step: head.step },
    heard: {
      ...(heard === undefined ? {} : { unit: heard }),
      ...(labelled ? { rate: `its times are labelled '${head.abscissa.unit}', the format writes seconds` } : {}),
      ...(inTime || labelled ? {} : { rate: of === 'time' ? 'its times are not even' : `${function_} along ${of}` }),
    },
  };
}

function nameOf({ idLines, response }: Dataset58): string {
  const direction = directions[Math.abs(response.direction)] ?? '';
  const node =
    response.node === 0
      ? response.entity
      : `${response.entity} node ${response.node} ${response.direction < 0 ? '−' : response.direction > 0 ? '+' : ''}${direction}`;
  return [idLines[0]!, node.trim()].filter((each) => each !== '').join(', ');
}

function unitOf({ ordinate, denominator }: Dataset58): ReturnType<typeof recordedUnit> {
  if (denominator.specificType !== 0) {
    return { unit: notStated, heard: `a ratio, '${ordinate.unit}' over '${denominator.unit}'` };
  }
  if (ordinate.unit !== '') return recordedUnit(ordinate.unit);
  const kind = kindsOfOrdinate[ordinate.specificType];
  return { unit: notStated, ...(kind === undefined ? {} : { heard: `the file says ${kind}, in no unit` }) };
}

function kindDoubt({ ordinate, denominator }: Dataset58, { of, unit }: RecordedChannel): readonly Finding[] {
  const kind = kindsOfOrdinate[ordinate.specificType];
  if (kind === undefined || denominator.specificType !== 0 || !unit.known) return [];
  if (sameDimension(unit.value.dimension, quantities[kind].dimension)) return [];
  return [unitAgainstKind(of, unit.value.written, kind)];
}

const looked = 256;

/** Numbers written in the other byte order have sizes that nothing measured has. */
async function byteOrderDoubt(
  source: ByteSource,
  placed: PlacedDataset,
  { of }: RecordedChannel,
): Promise<readonly Finding[]> {
  if (placed.widths === undefined || placed.samples === 0) return [];
  const { littleEndian } = placed.head.binary!;
  const frame = sum(placed.widths);
  const last = placed.widths.at(-1)!;
  const bytes = await source.read(placed.from, Math.min(looked, placed.samples) * frame);
  const view = viewOf(bytes);
  const strange = (little: boolean) => {
    let count = 0;
    for (let at = frame - last; at + last <= bytes.length; at += frame) {
      const value = Math.abs(last === 4 ? view.getFloat32(at, little) : view.getFloat64(at, little));
      if (!(value === 0 || (value > 1e-20 && value < 1e20))) count++;
    }
    return count;
  };
  const [asSaid, otherwise] = [strange(littleEndian), strange(!littleEndian)];
  if (asSaid < 16 || asSaid < 0.2 * Math.min(looked, placed.samples) || otherwise > 0) return [];
  const [said, meant] = littleEndian ? ['little', 'big'] : ['big', 'little'];
  return [
    headAgainstItself(
      of,
      `the bytes are said to be ${said}-endian; read so, many numbers are beyond any measurement, read ${meant}-endian none is`,
      'one byte order',
    ),
  ];
}

async function* blocks(source: ByteSource, file: string, datasets: readonly PlacedDataset[]): AsyncGenerator<Block> {
  const atOnce = framesInBlock(datasets.length);
  const piece = Math.max(4096, Math.floor((16 * pieceLength) / datasets.length));
  const cursors = datasets.map((each) => valueCursor(source, file, each, Math.min(pieceLength, piece)));
  const longest = Math.max(...datasets.map(({ samples }) => samples));
  for (let from = 0; from < longest; from += atOnce) {
    const read = [];
    for (const [index, { samples }] of datasets.entries()) {
      read.push(await cursors[index]!.next(Math.max(0, Math.min(atOnce, samples - from))));
    }
    yield {
      from,
      values: read.map(({ value }) => value),
      ...(datasets.some(({ head }) => head.complex)
        ? { imaginary: read.map(({ imaginary }, index) => (datasets[index]!.head.complex ? imaginary : undefined)) }
        : {}),
      ...(datasets.every(({ head }) => head.even)
        ? {}
        : { along: read.map(({ along }, index) => (datasets[index]!.head.even ? undefined : along)) }),
    };
  }
}
