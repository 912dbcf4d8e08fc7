import { expect, test } from 'vitest';
import {
  type AnyPart,
  catalogue,
  dataSheetOf,
  input,
  kindsOf,
  known,
  parts,
  supply,
} from '../../../../evidence/bench.ts';
import { fieldOf, isOptional, type Stated } from '../quantity/index.ts';
import { magnitude } from '../signal/complex.ts';
import { type Shelf, shelves } from './catalogue.ts';
import { measuringChain } from './chain.ts';
import { prediction } from './prediction.ts';
import { transfer } from './stage.ts';
import type { Feed } from './transducer/transducer-kind.ts';

/** Completeness: every kind of every list builds through the interface all kinds share, from the generic catalogue. */
const kinds = shelves.flatMap((shelf) =>
  kindsOf[shelf].map((kind) => [`${shelf}: ${kind.kind}`, shelf, kind] as const),
);

const partsOf = (shelf: Shelf, kind: string) =>
  (catalogue[shelf] as readonly AnyPart[]).filter((part) => part.kind === kind);

test.each(kinds)('%s has a part in the generic catalogue, with every required field stated', (_name, shelf, kind) => {
  const found = partsOf(shelf, kind.kind);
  expect(found.length).toBeGreaterThan(0);
  for (const part of found) {
    const values = part.sheet.values as Readonly<Record<string, Stated<unknown> | undefined>>;
    const open = Object.entries(dataSheetOf(part)).filter(
      ([name, field]) => !isOptional(field) && !values[name]?.known,
    );
    expect(open.map(([name]) => `${part.name}: ${name}`)).toEqual([]);
  }
});

test.each(kinds)('%s says who says so, and reads the example of each of its fields', (_name, _shelf, kind) => {
  expect(kind.sources.length).toBeGreaterThan(0);
  expect(kind.name).not.toBe('');
  for (const [name, entry] of Object.entries(kind.dataSheet)) {
    const field = fieldOf(entry);
    if (field.type === 'curve') continue;
    const raw = field.type === 'count' ? Number(field.example) : field.example;
    expect(() => field.read(raw, { decimal: 'point' }), `${name}: ${field.example}`).not.toThrow();
  }
});

const inputFor: Readonly<Record<Feed, string>> = {
  'constant-current': 'PORT-24',
  'self-generating': 'PORT-24',
  'negative-supply': 'RACK-DC',
  'voltage-supply': 'RACK-DC',
  'current-loop': 'AI-16',
};

test.each(catalogue.transducers.map((each) => [each.name, each] as const))(
  '%s makes a chain on every mount, cable and input that takes it: sensitivity in, a number out',
  (_name, transducer) => {
    for (const mount of catalogue.mounts) {
      for (const cable of catalogue.cables) {
        const row = (name: string) =>
          measuringChain(
            parts({ transducer, mount, cable, metres: 30, input: input(name), inLine: [supply('LOOP-24')] }),
          );
        const { feed } = row('PORT-24').transducer;
        const chain = row(inputFor[feed]);
        expect(chain.meets).toBe(true);
        expect(chain.doubt).toBeUndefined();
        const predicted = prediction(chain);
        // In the middle of its band every chain indicates what there is, but for a tenth.
        const at = feed === 'current-loop' || feed === 'voltage-supply' ? 80 : 100;
        const hand = mount.name === 'hand-probe' || mount.name === 'magnet-2pole';
        if (!hand) expect(Math.abs(magnitude(known(predicted.response)(at)) - 1)).toBeLessThan(0.1);
        expect(magnitude(transfer(known(chain.stages), at))).toBeGreaterThan(0);
        expect(predicted.ceilings.map(known).every((each) => each.peak > 0 && each.gain(at) > 0)).toBe(true);
        expect(known(chain.stages)[0]!.enters).toBe('motion');
        expect(known(chain.stages).at(-1)!.leaves).toBe('code');
        // A spectrum only where a signal is left, one number only where it was detected.
        expect(chain.transducer.signal === 'overall').toBe(chain.transducer.oneNumber !== undefined);
        expect(chain.transducer.biased !== undefined).toBe(feed === 'constant-current');
      }
    }
  },
);

test('every input takes at least one kind of transducer of the catalogue, and no two kinds share a word', () => {
  for (const each of catalogue.inputs) {
    const taken = catalogue.transducers.filter(
      (transducer) => measuringChain(parts({ transducer, input: each })).meets,
    );
    expect(taken.length, each.name).toBeGreaterThan(0);
  }
  const words = kinds.map(([, , kind]) => kind.kind);
  expect(new Set(words).size).toBe(words.length);
});
