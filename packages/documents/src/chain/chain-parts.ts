import {
  type Answer,
  type Cable,
  type ChainParts,
  cableKinds,
  type Fields,
  fieldOf,
  inputKinds,
  kindCalled,
  mountKinds,
  type PartKind,
  type Sheet,
  type Showing,
  type Stated,
  showQuantity,
  supplyKinds,
  transducerKinds,
  words,
} from '@soundpost/core';
import { keyFields, type PartKindName } from './key-fields.ts';
import { type PartSymbol, partSymbol, type Role } from './part-symbols.ts';

/** A part of a chain as every drawing and table of it needs it. */
export interface ChainPart {
  readonly role: Role;
  readonly name: string;
  readonly kind: PartKind;
  readonly sheet: Sheet;
  readonly keys: readonly string[];
  readonly symbol: PartSymbol;
  /** What belongs to this place and not to the part: the length of its cable. */
  readonly here: readonly { readonly name: string; shown(showing: Showing): string }[];
}

interface AnyPart {
  readonly kind: PartKindName;
  readonly name: string;
  readonly sheet: unknown;
}

/** The parts of a chain in the order in which the motion passes them. */
export function chainParts(parts: ChainParts): readonly ChainPart[] {
  const { transducer, mount, cable, inLine, input, cableLength } = parts;
  const made = (role: Role, part: AnyPart, kinds: readonly PartKind[]): ChainPart => ({
    role,
    name: part.name,
    kind: kindCalled(kinds, part.kind),
    sheet: part.sheet as Sheet,
    keys: keyFields(part.kind),
    symbol: partSymbol(part.kind),
    here: [],
  });
  const cableOf = (of: Cable, length: Answer<number>): ChainPart => ({
    ...made('cable', of, cableKinds),
    here: [
      {
        name: 'length',
        shown: (showing) => (length.known ? showQuantity('length', length.value, showing) : 'unknown'),
      },
    ],
  });
  const along = inLine.flatMap((part, place) => [
    made('in the line', part, supplyKinds),
    ...(parts.onward ?? []).filter((each) => each.behind === place).map((each) => cableOf(each.cable, each.length)),
  ]);
  return [
    made('mount', mount, mountKinds),
    made('transducer', transducer, transducerKinds),
    cableOf(cable, cableLength),
    ...along,
    made('input', input, inputKinds),
  ];
}

/** The key numbers of a part as lines: `low corner 0.5 Hz`. */
export function keyNumbers(part: ChainPart, showing: Showing): readonly string[] {
  const fields = part.kind.dataSheet as Fields;
  const ofSheet = part.keys.flatMap((key) => {
    const entry = part.sheet.values[key] as Stated<unknown> | undefined;
    const field = fields[key];
    if (entry === undefined || field === undefined) return [];
    const value = entry.known ? fieldOf(field).show(entry.value, showing) : 'unknown';
    // The unit tells that it is per length; a number and its unit stay in one line.
    return [`${words(key).replace(/ per length$/, '')} ${value.replaceAll(' ', '\u00a0')}`];
  });
  return [...part.here.map((each) => `${each.name} ${each.shown(showing)}`), ...ofSheet];
}
