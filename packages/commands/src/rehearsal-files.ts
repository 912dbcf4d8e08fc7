import {
  type DefectStatement,
  Refusal,
  type RehearsalScript,
  type RehearsedMotion,
  type RehearsedRecord,
} from '@soundpost/core';
import { csvBytes, universalBytes, wavBytes } from '@soundpost/files';

export interface WrittenFile {
  readonly path: string;
  readonly content: Uint8Array | string;
}

const unit = { acceleration: 'm/s²', velocity: 'm/s', displacement: 'm' } as const;

/** How a record was made. */
export interface RecordMade {
  readonly occasion: string;
  readonly defects: readonly DefectStatement[];
  readonly script: RehearsalScript;
}

/** The files of a record by the ending of the name: a WAV has a file beside it that says what a WAV cannot. */
export function rehearsalFiles(
  path: string,
  record: RehearsedRecord,
  motion: RehearsedMotion,
  made: RecordMade,
  of: string,
): readonly WrittenFile[] {
  const ending = path.slice(path.lastIndexOf('.') + 1).toLowerCase();
  const write = writers[ending];
  if (write !== undefined) return write(path, record, motion, made, of);
  throw new Refusal({ read: path, expected: `a name that ends in ${Object.keys(writers).join(', ')}` });
}

type Writer = (
  path: string,
  record: RehearsedRecord,
  motion: RehearsedMotion,
  made: RecordMade,
  of: string,
) => readonly WrittenFile[];

const writers: Readonly<Record<string, Writer>> = {
  wav: (path, record, motion, made, of) => [
    { path, content: joined(wavBytes({ channels: [valuesOf(record)], rate: record.rate, form: 'float32' })) },
    { path: `${path}.json`, content: `${JSON.stringify(factsOf(record, motion, made, of), null, 2)}\n` },
  ],
  csv: (path, record, motion, _made, of) => [
    {
      path,
      content: joined(
        csvBytes({
          rate: record.rate,
          channels: [
            {
              name: of,
              unit: unitOf(record),
              values: valuesOf(record),
              gain: '1',
              coupling: couplingOf(record),
              sensitivity: sensitivityOf(record),
              speed: `${motion.speed.first} Hz`,
            },
          ],
        }),
      ),
    },
  ],
  uff: (path, record, _motion, _made, of) => [
    {
      path,
      content: joined(
        universalBytes(
          [
            {
              name: of,
              functionType: 1,
              abscissa: { specificType: 17, label: 'Time', unit: 's' },
              ordinate: {
                specificType: 0,
                label: record.loop === undefined ? 'Voltage' : 'Current',
                unit: unitOf(record),
              },
              along: { first: 0, step: 1 / record.rate },
              values: valuesOf(record),
              precision: 'double',
            },
          ],
          'text',
        ),
      ),
    },
  ],
};

/** A loop is recorded as its current, as by a clamp or across a resistor that was divided out. */
function valuesOf({ loop, volts }: RehearsedRecord): Float64Array {
  return loop === undefined ? volts : loop.amperes.map((each) => 1000 * each);
}

function unitOf({ loop }: RehearsedRecord): string {
  return loop === undefined ? 'V' : 'mA';
}

function couplingOf({ coupling, direct }: RehearsedRecord): string {
  return coupling === 'direct' && direct.known ? 'direct' : 'alternating';
}

function sensitivityOf({ sensitivity, senses }: RehearsedRecord): string {
  return `${sensitivity} V/(${unit[senses]})`;
}

/** What a WAV cannot say of its one channel, and how the record was made. */
function factsOf(
  record: RehearsedRecord,
  motion: RehearsedMotion,
  { occasion, defects, script }: RecordMade,
  of: string,
) {
  return {
    soundpost: 'recording facts',
    made: 'rehearsal: no machine was recorded',
    channel: {
      name: of,
      unit: unitOf(record),
      sensitivity: sensitivityOf(record),
      gain: 1,
      coupling: couplingOf(record),
    },
    rate: `${record.rate} Hz`,
    speed: `${motion.speed.first} Hz`,
    seed: script.seed,
    occasion,
    ...(defects.length === 0 ? {} : { defects }),
    script,
    contents: motion.contents,
  };
}

function joined(pieces: Iterable<Uint8Array>): Uint8Array {
  const all = [...pieces];
  const whole = new Uint8Array(all.reduce((sum, each) => sum + each.length, 0));
  let at = 0;
  for (const each of all) {
    whole.set(each, at);
    at += each.length;
  }
  return whole;
}
