import { type Finding, notStated, type RecordedChannel, type Remark, stated } from '@soundpost/core';
import { headAgainstItself } from '../contradictions.ts';
import { mostChannels, refusedAt } from '../open-recording.ts';
import { recordedUnit } from '../recorded-unit.ts';
import { silentChannel } from '../silent-channel.ts';

/** A matrix of which each column, or each row, is a channel, whichever version of the format it stands in. */
export interface NamedMatrix {
  readonly path: string;
  readonly channels: number;
  readonly samples: number;
  /** The rows are the channels. */
  readonly interleaved: boolean;
  readonly complex: boolean;
  /** Samples of each of its channels that are there; nothing where only reading them tells. */
  there(channel: number): number | undefined;
}

/** What else the file says: single numbers and texts, by where they stand. */
export interface SaidBeside {
  readonly numbers: readonly { readonly path: string; readonly single?: number }[];
  readonly texts: readonly { readonly path: string; readonly text: string }[];
}

const rateName = /^(fs|f_s|sr|srate|(sample|sampling)_?(rate|frequency|freq)|fsamp|rate|dt|delta_?t|increment)$/i;
const speedName = /rpm|speed/i;
const timeName = /^(t|time|times|tvec)$/i;
const unitName = /^(unit|units|y?_?unit_?label)$/i;

function lastOf(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1);
}

function groupOf(path: string): string {
  return path.slice(0, Math.max(0, path.lastIndexOf('.')));
}

/** Throws Refusal where there are no channels, or more than any recorder has. */
export function refuseUncounted(file: string, matrices: readonly Pick<NamedMatrix, 'channels'>[]): void {
  const count = matrices.reduce((sum, each) => sum + each.channels, 0);
  if (count > 0 && count <= mostChannels) return;
  throw refusedAt(file, 'the whole of it', {
    read: count === 0 ? 'no variable of more than one number' : `${count} channels`,
    expected: `1 to ${mostChannels} channels, as vectors or as columns of matrices`,
  });
}

/** The channels of the matrices; a rate, a speed or a unit that the file does not say for sure is asked about. */
export function channelsOf(
  matrices: readonly NamedMatrix[],
  { numbers, texts }: SaidBeside,
): readonly RecordedChannel[] {
  const rates = numbers.filter(({ path, single }) => single !== undefined && rateName.test(lastOf(path)));
  const times = matrices.filter(({ path }) => timeName.test(lastOf(path)));
  const heardRate = [
    ...rates.map(({ path, single }) => `the file says ${path} = ${single}, without a unit`),
    ...times.map(({ path }) => `'${path}' may be its time, in a unit the file does not say`),
  ].join('; ');
  const heardSpeed = numbers
    .filter(({ path, single }) => single !== undefined && speedName.test(lastOf(path)))
    .map(({ path, single }) => `the file says ${path} = ${single}, without a unit`)
    .join('; ');
  let index = 0;
  return matrices.flatMap((matrix) =>
    Array.from({ length: matrix.channels }, (_, number): RecordedChannel => {
      const { path } = matrix;
      const name = matrix.channels === 1 ? path : `${path}, ${matrix.interleaved ? 'row' : 'column'} ${number + 1}`;
      const { unit, heard } = unitOf(path, texts);
      return {
        ...silentChannel(index++),
        of: name,
        name: stated(name, name),
        unit,
        samples: matrix.there(number),
        claimedSamples: matrix.samples,
        complex: matrix.complex,
        heard: {
          ...(heardRate === '' ? {} : { rate: heardRate }),
          ...(heardSpeed === '' ? {} : { speed: heardSpeed }),
          ...(heard === undefined ? {} : { unit: heard }),
        },
      };
    }),
  );
}

/** A unit that stands beside the numbers in one structure is theirs; one elsewhere may be anybody's. */
function unitOf(path: string, texts: SaidBeside['texts']): ReturnType<typeof recordedUnit> {
  const units = texts.filter((each) => unitName.test(lastOf(each.path)));
  const beside = units.filter((each) => groupOf(each.path) === groupOf(path) && groupOf(path) !== '');
  if (beside.length === 1) return recordedUnit(beside[0]!.text);
  if (units.length === 0) return { unit: notStated };
  return {
    unit: notStated,
    heard: units.map((each) => `the file says ${each.path} = '${each.text.slice(0, 40)}'`).join('; '),
  };
}

/** The first 128 bytes begin with a text that says who wrote the file, and when. */
export function remarksOf(
  head: Uint8Array,
  { numbers, texts }: SaidBeside,
  notRead: readonly string[],
): readonly Remark[] {
  return [
    { name: 'head', text: new TextDecoder('windows-1252').decode(head.subarray(0, 116)).replaceAll('\0', ' ').trim() },
    ...numbers.flatMap(({ path, single }) => (single === undefined ? [] : [{ name: path, text: `${single}` }])),
    ...texts.map(({ path, text }) => ({ name: path, text })),
    ...notRead.map((path) => ({ name: path, text: 'not read' })),
  ].slice(0, 200);
}

/** A matrix of as many rows as columns does not say which are its channels. */
export function squareFindings(path: string, rows: number, columns: number): readonly Finding[] {
  if (rows !== columns || rows === 1) return [];
  const found = `${rows} rows and as many columns: either may be the channels`;
  return [headAgainstItself(path, found, 'more samples than channels')];
}
