import { Broken } from '@soundpost/core';
import { entryOf, type Placed, type PlacedEntry, type PlacedMap } from './placed.ts';
import type { Reader, Reading, unread } from './reader.ts';

/** One version of a file format, and what is new in it. */
export interface Version {
  readonly version: number;
  readonly what: string;
  /** Carries a file of the version before forward; places stay, so that a refusal still points into the old file. */
  readonly forward?: (file: PlacedMap) => PlacedMap;
}

/** The versions of one file format, oldest first. */
export interface Versions {
  readonly file: string;
  readonly newest: number;
  readonly list: readonly Version[];
}

/** Throws Broken where a version is left out, or has no way forward from the one before it. */
export function versions(file: string, list: readonly [Version, ...Version[]]): Versions {
  for (const [index, { version, forward }] of list.entries()) {
    if (version !== index + 1) throw new Broken('versions count from 1, none left out', { file, version });
    if ((forward === undefined) !== (index === 0)) {
      throw new Broken('every version but the first has a way forward', { file, version });
    }
  }
  return { file, newest: list.length, list };
}

export const plantVersions = versions('plant', [{ version: 1, what: 'The first format.' }]);
export const catalogueVersions = versions('catalogue', [{ version: 1, what: 'The first format.' }]);
export const recordsVersions = versions('records', [{ version: 1, what: 'The first format.' }]);
export const storeVersions = versions('store', [{ version: 1, what: 'The first format.' }]);

/** Every file format that has versions. */
export const versionedFiles: readonly Versions[] = [plantVersions, catalogueVersions, recordsVersions, storeVersions];

/**
 * Reads a file of any version up to the newest: an older one is carried forward first. A newer one is refused with one
 * sentence and nothing else: what else looks strange in it is not the fault of the file.
 */
export function versioned<T>(of: Versions, reader: Reader<T>): Reader<T> {
  return {
    ...reader,
    read: (placed, reading) => {
      const version = placed.kind === 'map' ? versionOf(placed) : undefined;
      if (placed.kind !== 'map' || version === undefined) return reader.read(placed, reading);
      if (version > of.newest) return refusedAsNewer(placed, of, reading);
      const forward = carriedForward(of, placed, version);
      const clash = version === of.newest ? undefined : standsTwice(forward);
      if (clash === undefined) return reader.read(forward, reading);
      return reading.refuse(clash.at, {
        read: clash.key,
        expected: `the keys of version ${version} in a file of version ${version}`,
        suggestion: `A newer version says the same under '${clash.key}': keep one of the two.`,
      });
    },
  };
}

/** The number of the version; nothing where none stands that could be one, of which the reader speaks. */
function versionOf(file: PlacedMap): number | undefined {
  const value = entryOf(file, 'version')?.value;
  if (value?.kind !== 'scalar' || !/^[1-9]\d{0,8}$/.test(value.source)) return undefined;
  return Number(value.source);
}

function refusedAsNewer(file: PlacedMap, of: Versions, reading: Reading): typeof unread {
  const value = entryOf(file, 'version')!.value;
  return reading.refuse(value, {
    read: value.kind === 'scalar' ? value.source : '',
    expected: `a version up to ${of.newest}, the newest this program reads of a ${of.file} file`,
    suggestion: 'The file was written by a newer program: read it with that one; nothing was changed.',
  });
}

/** A key that stands twice once the file is carried forward: it held an old and a new word for one thing. */
function standsTwice(placed: Placed): PlacedEntry | undefined {
  if (placed.kind === 'scalar') return undefined;
  if (placed.kind === 'list') return placed.elements.map(standsTwice).find(Boolean);
  const keys = placed.entries.map(({ key }) => key);
  const twice = placed.entries.find(({ key }, index) => keys.indexOf(key) < index);
  return twice ?? placed.entries.map(({ value }) => standsTwice(value)).find(Boolean);
}

/** The file as the newest version writes it. */
export function carriedForward(of: Versions, file: PlacedMap, version: number): PlacedMap {
  const steps = of.list.slice(version);
  if (steps.length === 0) return file;
  const forward = steps.reduce((before, step) => step.forward!(before), file);
  const newest = String(of.newest);
  const renumbered = (value: Placed): Placed =>
    value.kind === 'scalar' ? { ...value, source: newest, value: of.newest } : value;
  return {
    ...forward,
    entries: forward.entries.map((each) =>
      each.key === 'version' ? { ...each, value: renumbered(each.value) } : each,
    ),
  };
}
