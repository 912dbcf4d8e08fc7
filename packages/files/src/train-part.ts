import {
  type Fields,
  fixed,
  type MachineElement,
  machineElementKinds,
  type Operation,
  quantityField,
  Refusal,
  type RefusalReason,
  type Stated,
  spanField,
  type Train,
  train,
} from '@soundpost/core';
import { listOf, mapOf, named } from './collections.ts';
import { byKind, kindReader } from './kinds.ts';
import { entryOf, type Place, type Placed, type PlacedMap } from './placed.ts';
import { made, plain, type Reader, text, type Unread } from './reader.ts';
import { beside, optionally, record } from './record.ts';
import { sheet } from './sheet.ts';
import { stated } from './stated.ts';

/** `machines/P-301/elements/motor` as whose sheet it is: `P-301/motor`. */
function elementName(map: PlacedMap): string {
  const names = map.path.split('/');
  return [names[1], names.at(-1)].join('/');
}

interface KindOfElement {
  readonly kind: string;
  readonly sheet: Fields;
  readonly places: readonly string[];
  readonly carriedPlaces?: readonly string[];
  readonly onOneShaft?: (shaft: string) => Readonly<Record<string, string>>;
}

/** One kind of element: the shafts it stands on by their roles, and its data sheet beside them. */
function elementReader(kind: KindOfElement) {
  const shafts = Object.fromEntries(rolesOf(kind).map((role) => [role, optionally(text(shaftOf(kind, role)))]));
  return kindReader(
    kind.kind,
    record(`an element of kind ${kind.kind}`, { ...shafts, sheet: beside(sheet(kind.sheet, elementName)) }),
  );
}

function rolesOf(kind: KindOfElement): readonly string[] {
  return [
    ...new Set([...kind.places, ...(kind.carriedPlaces ?? []), ...(kind.onOneShaft === undefined ? [] : ['on'])]),
  ];
}

function shaftOf(kind: KindOfElement, role: string): string {
  return role === 'on' && kind.places.includes('on')
    ? 'The shaft it stands on'
    : role === 'on'
      ? 'The one shaft it stands on, where its other side does not turn'
      : kind.carriedPlaces?.includes(role) === true
        ? `A name for the ${role} as a shaft, where something stands on it`
        : `The shaft on its ${role} side, or '${fixed}'`;
}

function carriedIn(kind: KindOfElement, read: Readonly<Record<string, unknown>>): readonly string[] {
  return (kind.carriedPlaces ?? []).filter((role) => read[role] !== undefined);
}

type Standing = { readonly kind: string; readonly sheet: unknown } & Readonly<Record<string, unknown>>;

const elementOfTrain: Reader<Omit<MachineElement, 'name'>> = made(
  byKind(
    'an element of the train',
    (machineElementKinds as readonly KindOfElement[]).map(elementReader),
  ) as Reader<Standing>,
  (read, placed, refuse) => {
    const kind = (machineElementKinds as readonly KindOfElement[]).find((each) => each.kind === read.kind)!;
    const on = read.on;
    const shafts =
      typeof on === 'string' && kind.onOneShaft !== undefined
        ? kind.onOneShaft(on)
        : Object.fromEntries([...kind.places, ...carriedIn(kind, read)].map((role) => [role, read[role]]));
    const missing = Object.keys(shafts).find((role) => typeof shafts[role] !== 'string');
    if (missing !== undefined) {
      return refuse(placed as Place, {
        read: '',
        expected: `'${rolesOf(kind).join("' or '")}': ${shaftOf(kind, missing)}`,
      });
    }
    // Kind, sheet and shafts were read by the list of the core, so together they are an element of that kind.
    return { kind: read.kind, sheet: read.sheet, shafts } as unknown as Omit<MachineElement, 'name'>;
  },
);

const elements = named(elementOfTrain, 'name', 'the elements of the train by name');

const operation: Reader<Operation> = made(
  record('how the train is run', {
    motor: optionally(text('The motor whose line frequency sets the speed')),
    lineFrequency: optionally(
      stated(spanField('frequency', 'Line frequency, lowest to highest', { example: '25..50 Hz' })),
    ),
    shaft: optionally(text('The shaft whose speed is given')),
    speed: optionally(
      stated(spanField('shaft speed', 'Speed of that shaft, lowest to highest', { example: '1480..1490 r/min' })),
    ),
    wander: optionally(
      stated(
        quantityField('fraction', 'How far the speed strays within one record, least to most', { example: '1 %' }),
      ),
    ),
    states: optionally(
      mapOf(plain(quantityField('frequency', 'Speed or line frequency of a named state')), 'operating states by name'),
    ),
  }),
  (read, placed, refuse) => {
    const states = [...(read.states ?? [])].map(([name, at]) => ({ name, at }));
    const wander = read.wander === undefined ? {} : { wander: read.wander };
    if (read.motor !== undefined && read.lineFrequency !== undefined && read.shaft === undefined) {
      return { by: 'line' as const, motor: read.motor, range: read.lineFrequency, ...wander, states };
    }
    if (read.shaft !== undefined && read.speed !== undefined && read.motor === undefined) {
      return { by: 'shaft' as const, shaft: read.shaft, range: read.speed, ...wander, states };
    }
    return refuse(placed, {
      read: Object.keys(read).join(', '),
      expected: "either 'motor' with 'line-frequency', or 'shaft' with 'speed'",
    });
  },
);

/** The keys of a machine that describe its train. */
export const trainParts = {
  shafts: listOf(text('The name of a shaft'), 'the shafts of the train', { least: 1 }),
  elements,
  operation,
  plates: optionally(mapOf(stated(quantityField('shaft speed', 'Speed on a plate')), 'speeds on plates by shaft')),
} as const;

interface ReadTrain {
  readonly shafts: readonly string[];
  readonly elements: readonly (Omit<MachineElement, 'name'> & { readonly name: string })[];
  readonly operation: Operation;
  readonly plates?: ReadonlyMap<string, Stated<number>> | undefined;
}

/** The train of a machine, its names checked against each other; what does not agree is refused where it stands. */
export function trainAt(
  of: string,
  read: ReadTrain,
  placed: Placed,
  refuse: (place: Place, reason: RefusalReason) => Unread,
): Train | Unread {
  try {
    return train({
      of,
      shafts: read.shafts,
      // Name and element were read from one entry, so together they are an element of the union.
      elements: read.elements as readonly MachineElement[],
      operation: read.operation,
      plates: [...(read.plates ?? [])].map(([shaft, speed]) => ({ shaft, speed })),
    });
  } catch (error) {
    if (error instanceof Refusal) return refuse(placeOf(error.reason.read, placed), error.reason);
    throw error;
  }
}

/** Where a name of the train is used, or else where it is listed; the machine itself where it is not to be found. */
function placeOf(name: string, machine: Placed): Place {
  if (machine.kind !== 'map') return machine;
  const shafts = entryOf(machine, 'shafts')?.value;
  const listed = shafts?.kind === 'list' ? shafts.elements.filter((each) => placeIn(each, name) !== undefined) : [];
  if (listed.length > 1) return listed.at(-1)!;
  for (const key of ['elements', 'operation', 'plates', 'shafts']) {
    const part = entryOf(machine, key)?.value;
    const place = part === undefined ? undefined : placeIn(part, name);
    if (place !== undefined) return place;
  }
  return machine;
}

/** The last place of a text among keys and scalars: what stands twice is at fault where it stands again. */
function placeIn(placed: Placed, name: string): Place | undefined {
  if (placed.kind === 'scalar') return placed.source === name ? placed : undefined;
  if (placed.kind === 'list') return placed.elements.map((each) => placeIn(each, name)).findLast(Boolean);
  const places = placed.entries.flatMap(({ key, at, value }) => [key === name ? at : undefined, placeIn(value, name)]);
  return places.findLast(Boolean);
}
