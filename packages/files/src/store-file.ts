import { type Money, type Stated, type Store, storePartSheet, storeSheet } from '@soundpost/core';
import { named } from './collections.ts';
import { nameAt } from './placed.ts';
import { choice, made, type Reader } from './reader.ts';
import { optionally, record } from './record.ts';
import { sheet } from './sheet.ts';
import { versionReader } from './version.ts';
import { storeVersions, versioned } from './versions.ts';

export const storeVersion = storeVersions.newest;

const shelf = (called: string) =>
  optionally(
    named(sheet(storePartSheet, nameAt, `what a ${called} costs and how it is had`), 'name', `${called}s by name`),
  );

/** A store file: `soundpost: store`, its version, what keeping costs, and prices and stock by the names of the parts. */
export const storeReader: Reader<Store> = versioned(
  storeVersions,
  made(
    record('a store file', {
      soundpost: choice(['store'], 'What the file is'),
      version: versionReader(storeVersion),
      keeping: sheet(storeSheet, 'the store', 'what keeping part numbers costs'),
      transducers: shelf('transducer'),
      mounts: shelf('mount'),
    }),
    ({ keeping, transducers = [], mounts = [] }, placed, refuse) => {
      const currencies = [keeping, ...transducers, ...mounts].flatMap(({ values }) =>
        (Object.values(values) as readonly (Stated<unknown> | undefined)[]).flatMap((each) =>
          each?.known === true && isMoney(each.value) ? [each.value.currency] : [],
        ),
      );
      const unlike = [...new Set(currencies)];
      if (unlike.length <= 1) return { head: keeping, parts: { transducers, mounts } };
      return refuse(placed, {
        read: unlike.join(' and '),
        expected: 'one currency throughout',
        suggestion: 'No rate of exchange is known here: write all amounts in one currency.',
      });
    },
  ),
);

function isMoney(value: unknown): value is Money {
  return typeof value === 'object' && value !== null && 'currency' in value;
}
