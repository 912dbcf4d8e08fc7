import {
  type Catalogue,
  cableKinds,
  inputKinds,
  mountKinds,
  type Shelf,
  shelves,
  supplyKinds,
  transducerKinds,
} from '@soundpost/core';
import { named } from './collections.ts';
import { type SheetKind, sheetsByKind } from './kinds.ts';
import { nameAt } from './placed.ts';
import { choice, made, type Reader, text } from './reader.ts';
import { optionally, record } from './record.ts';
import { versionReader } from './version.ts';
import { catalogueVersions, versioned } from './versions.ts';

/** The kinds that may stand on each shelf, and what a part of it is called. */
const kindsOn: Readonly<Record<Shelf, { readonly called: string; readonly kinds: readonly SheetKind[] }>> = {
  transducers: { called: 'transducer', kinds: transducerKinds },
  mounts: { called: 'mount', kinds: mountKinds },
  cables: { called: 'cable', kinds: cableKinds },
  supplies: { called: 'supply', kinds: supplyKinds },
  inputs: { called: 'input', kinds: inputKinds },
};

function shelfReader(shelf: Shelf) {
  const { called, kinds } = kindsOn[shelf];
  const part = sheetsByKind(`a ${called}`, kinds, (map) => `${called} ${nameAt(map)}`);
  return named(part, 'name', `${shelf} by name`);
}

type Shelves = { readonly [S in Shelf]?: readonly unknown[] };

/** A catalogue of these shelves. The kinds were read by the lists of the core, so a part is what the core says it is. */
export function catalogueOf(title: string, read: Shelves): Catalogue {
  const filled = Object.fromEntries(shelves.map((shelf) => [shelf, read[shelf] ?? []]));
  return { title, ...filled } as unknown as Catalogue;
}

export const catalogueVersion = catalogueVersions.newest;

/** A catalogue file: `soundpost: catalogue`, its version, a title, and parts by shelf and name. */
export const catalogueReader: Reader<Catalogue> = versioned(
  catalogueVersions,
  made(
    record('a catalogue file', {
      soundpost: choice(['catalogue'], 'What the file is'),
      version: versionReader(catalogueVersion),
      title: text('What is in it, and whose it is'),
      ...shelfParts(),
    }),
    ({ title, ...rest }) => catalogueOf(title, rest),
  ),
);

/** The shelves as parts of a record; any may be left out. */
export function shelfParts() {
  return {
    transducers: optionally(shelfReader('transducers')),
    mounts: optionally(shelfReader('mounts')),
    cables: optionally(shelfReader('cables')),
    supplies: optionally(shelfReader('supplies')),
    inputs: optionally(shelfReader('inputs')),
  };
}
