import {
  type Field,
  type Fields,
  fieldOf,
  isOptional,
  notStated,
  type Stated,
  type StatedValues,
  type Status,
  stated,
  words,
} from '../../quantity/index.ts';
import type { Part } from '../part-kind.ts';
import { iepeAccelerometer } from '../transducer/iepe-accelerometer.ts';
import { type Teds, type Told, toldOf } from './teds.ts';

/** A part as far as its memory states it: what it states, what the sheet of the kind still asks for, what was left. */
export interface EntryFromTeds {
  readonly part: Part<typeof iepeAccelerometer>;
  readonly states: readonly string[];
  /** Required fields it says nothing of, in words. */
  readonly missing: readonly string[];
  /** Told in memory, but not taken over, and why. */
  readonly left: readonly string[];
}

type SheetName = keyof typeof iepeAccelerometer.dataSheet;

/** Fields of template 25 that mean the same as a field of the data sheet. */
const taken: readonly (readonly [told: string, sheet: SheetName])[] = [
  ['sensitivity', 'sensitivity'],
  ['high-pass-corner', 'lowCorner'],
  ['weight', 'mass'],
];

/** Fields that look alike and are not, or whose unit is not known. */
const notTaken: Readonly<Record<string, string>> = {
  resonance: 'on which mount it was found is not told',
  quality: 'on which mount it was found is not told',
  'temperature-coefficient': 'its unit is not known here',
  'amplitude-slope': 'its unit is not known here',
  'low-pass-corner': 'the sheet of this kind has no such field',
};

/** Whether the memory names a calibration: a date that somebody wrote. */
export function namesCalibration(teds: Teds): boolean {
  const date = teds.told.find(({ name }) => name === 'calibration-date');
  return date?.value !== undefined && !date.mayBeUnwritten;
}

/**
 * The catalogue entry a data sheet in memory amounts to; nothing where it is none of a constant-current accelerometer. The
 * sensitivity counts as a certificate only where a calibration date stands beside it, all else as a nameplate. A lowest
 * code is not taken over, since a field nobody wrote reads the same.
 */
export function entryFromTeds(teds: Teds, name: string): EntryFromTeds | undefined {
  if (teds.template?.id !== 25 || toldOf(teds, 'senses') !== 'acceleration') return undefined;
  if (toldOf(teds, 'sensitivity') === undefined) return undefined;
  const calibrated: Status = namesCalibration(teds) ? 'certificate' : 'nameplate';
  const values: Record<string, Stated<unknown>> = {};
  const states: string[] = [];
  const left: string[] = [];
  const told = (field: string): Told | undefined => teds.told.find((each) => each.name === field);
  for (const [from, to] of taken) {
    const each = told(from);
    if (each?.value === undefined) continue;
    if (each.mayBeUnwritten) {
      left.push(`${plain(from)}: it has the lowest code, as a field nobody wrote has`);
      continue;
    }
    const field = fieldOf(iepeAccelerometer.dataSheet[to]) as Field<unknown>;
    values[to] = stated(each.value, field.show(each.value), to === 'sensitivity' ? calibrated : 'nameplate', 'TEDS');
    states.push(words(to));
  }
  for (const [from, why] of Object.entries(notTaken)) {
    if (told(from)?.value !== undefined) left.push(`${plain(from)}: ${why}`);
  }
  const missing: string[] = [];
  for (const [key, each] of Object.entries(iepeAccelerometer.dataSheet as Fields)) {
    if (isOptional(each) || values[key] !== undefined) continue;
    values[key] = notStated;
    missing.push(words(key));
  }
  const sheet = { of: name, values: values as unknown as StatedValues<typeof iepeAccelerometer.dataSheet> };
  return { part: { kind: 'iepe-accelerometer', name, sheet }, states, missing, left };
}

/** `high-pass-corner` as it stands in a sentence. */
export function plain(name: string): string {
  return name.replaceAll('-', ' ');
}
