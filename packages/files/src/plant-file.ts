import {
  allowanceSheet,
  answerOf,
  type Catalogue,
  decibelField,
  machineFactsSheet,
  nearest,
  notBelowZeroField,
  type Plant,
  type PlantMachine,
  type PlantPoint,
  partCalled,
  quantityField,
  Refusal,
  type Shelf,
  titleSheet,
  together,
  usualPolicy,
} from '@soundpost/core';
import { alarm, probes } from './alarm-part.ts';
import { catalogueOf, shelfParts } from './catalogue-file.ts';
import { listOf, named } from './collections.ts';
import { UnreadableFile } from './file-refusal.ts';
import { limits } from './limits-part.ts';
import { inLinePart, nameOfPart } from './line-part.ts';
import { nameAt, type Place, type Placed } from './placed.ts';
import { areaReader, pointParts, pointStatement } from './point-part.ts';
import { choice, made, plain, type Reader, text, type Unread, unread, type WithPlace, withPlace } from './reader.ts';
import { optionally, record } from './record.ts';
import { sheet } from './sheet.ts';
import { stated } from './stated.ts';
import { trainAt, trainParts } from './train-part.ts';
import { versionReader } from './version.ts';
import { plantVersions, versioned } from './versions.ts';
import { window } from './window-part.ts';
import { separation, wiring } from './wiring-part.ts';

export const plantVersion = plantVersions.newest;

/** The way from the surface to the input, by the names of its parts. */
const chain = record('the measuring chain of a point', {
  transducer: optionally(nameOfPart('A transducer of the catalogue')),
  mount: optionally(nameOfPart('A mount of the catalogue')),
  cable: nameOfPart('A cable of the catalogue'),
  cableLength: stated(notBelowZeroField(quantityField('length', 'Length as walked on the route', { example: '85 m' }))),
  inLine: optionally(listOf(inLinePart, 'what stands in the line, from the transducer to the input')),
  input: nameOfPart('An input of the catalogue'),
});

const compare = record('the parts to compare at a point; all of the catalogue where nothing is said', {
  transducers: optionally(listOf(nameOfPart('A transducer of the catalogue'), 'transducers to compare')),
  mounts: optionally(listOf(nameOfPart('A mount of the catalogue'), 'mounts to compare')),
});

const point = record('a measuring point', {
  ...pointParts,
  chain: optionally(chain),
  compare: optionally(compare),
  alarm: optionally(alarm),
  limits: optionally(limits),
  shaft: optionally(withPlace(text('The shaft the probes look at; the one all speeds are counted in where left out'))),
  probes: optionally(probes),
  wiring: optionally(wiring),
  window: optionally(window),
});

const machine = made(
  record('a machine', {
    title: text('What it is', { example: 'Raw-water pump on a variable-speed drive' }),
    facts: sheet(machineFactsSheet, (map) => `machine ${map.path.split('/')[1]}`, 'what decides which limits apply'),
    ...trainParts,
    limits: optionally(limits),
    area: optionally(areaReader),
    points: named(point, 'name', 'measuring points by name'),
  }),
  (read, placed, refuse) => {
    const train = trainAt(nameAt(placed), read, placed, refuse);
    return train === unread ? unread : { ...read, train };
  },
);

const policy = record('how much margin this plant asks for', {
  detection: optionally(plain(decibelField('Least smallest level over the noise', { example: '10 dB' }))),
  headroom: optionally(plain(decibelField('Headroom below which a warning is given', { example: '3 dB' }))),
  response: optionally(
    plain(quantityField('fraction', 'Remaining tolerance below which a warning is given', { example: '2 %' })),
  ),
});

const plantRecord = record('a plant file', {
  soundpost: choice(['plant'], 'What the file is'),
  version: versionReader(plantVersion),
  plant: sheet(titleSheet, 'title', 'the title block'),
  catalogues: listOf(
    withPlace(text("'generic', or the path of a catalogue file")),
    'catalogues, later ones before earlier',
  ),
  parts: optionally(record('parts of this plant alone', shelfParts())),
  policy: optionally(policy),
  allowances: optionally(sheet(allowanceSheet, 'allowances of the plant', 'what no data sheet of a part tells')),
  separation: optionally(separation),
  machines: named(machine, 'name', 'machines by tag'),
});

/** Gives the catalogue of a name or path, or what is wrong with it. */
export type CatalogueFinder = (name: string) => Catalogue;

/** Reads a plant; the catalogues it names are found by `find`, which may throw Refusal. */
export function plantReader(find: CatalogueFinder): Reader<Plant> {
  const reader = made(plantRecord, (read, _placed, refuse): Plant | Unread => {
    const named = read.catalogues.map((each) => foundAt(each, find, refuse));
    if (!named.every((each): each is Catalogue => each !== unread)) return unread;
    const own = read.parts === undefined ? [] : [catalogueOf('parts of this plant', read.parts)];
    const catalogue = together([...named, ...own]);
    const machines = read.machines.map((each) => machineOf(each, catalogue, refuse));
    if (!machines.every((each): each is PlantMachine => each !== unread)) return unread;
    return {
      title: read.plant,
      policy: { ...usualPolicy, ...read.policy },
      allowances: read.allowances ?? nothingAllowed(),
      catalogue,
      machines,
      ...(read.separation === undefined ? {} : { separation: read.separation }),
    };
  });
  return versioned(plantVersions, reader);
}

/** A catalogue by its name; what is wrong with the name is said where it stands. */
function foundAt({ value, at }: WithPlace<string>, find: CatalogueFinder, refuse: Refuse): Catalogue | Unread {
  try {
    return find(value);
  } catch (error) {
    // A file with refusals of its own speaks for itself.
    if (error instanceof Refusal && !(error instanceof UnreadableFile)) return refuse(at, error.reason);
    throw error;
  }
}

function nothingAllowed(): Plant['allowances'] {
  const unknown = { known: false } as const;
  const values = Object.fromEntries(Object.keys(allowanceSheet).map((name) => [name, unknown]));
  return { of: 'allowances of the plant', values: values as Plant['allowances']['values'] };
}

type Refuse = (place: Place, reason: { read: string; expected: string; suggestion?: string }) => Unread;
type MachineRead = (typeof plantRecord extends Reader<infer R> ? R : never)['machines'][number];
type PointRead = MachineRead['points'][number];

function machineOf(read: MachineRead, catalogue: Catalogue, refuse: Refuse): PlantMachine | Unread {
  const names = [...read.shafts, ...read.elements.map((each) => each.name)];
  const points = read.points.map((each) => pointOf(inArea(each, read.area), read.shafts, names, catalogue, refuse));
  if (!points.every((each): each is PlantPoint => each !== unread)) return unread;
  return {
    name: read.name,
    title: read.title,
    facts: read.facts,
    train: read.train,
    limits: read.limits,
    points,
  };
}

/** A point lies in the area of its machine unless it says which one it lies in. */
function inArea(point: PointRead, ofMachine: MachineRead['area']): PointRead {
  const area = point.area ?? ofMachine;
  return area === undefined ? point : { ...point, area };
}

function pointOf(
  read: PointRead,
  shafts: readonly string[],
  names: readonly string[],
  catalogue: Catalogue,
  refuse: Refuse,
): PlantPoint | Unread {
  const look = <S extends Shelf>(shelf: S, name: WithPlace<string>) => partOn(catalogue, shelf, name, refuse);
  const statement = pointStatement(read.name, read);
  if (read.shaft !== undefined && !shafts.includes(read.shaft.value)) {
    return refuse(read.shaft.at, { read: read.shaft.value, expected: `a shaft of the train: ${shafts.join(', ')}` });
  }
  const unheard = read.hears?.find((each) => !names.includes(each.value));
  if (unheard !== undefined) {
    const near = nearest(unheard.value, names);
    return refuse(unheard.at, {
      read: unheard.value,
      expected: `an element or shaft of the machine: ${names.join(', ')}`,
      ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
    });
  }
  const transducers = read.compare?.transducers?.map((each) => look('transducers', each)) ?? catalogue.transducers;
  const mounts = read.compare?.mounts?.map((each) => look('mounts', each)) ?? catalogue.mounts;
  const way = read.chain === undefined ? undefined : wayOf(read.chain, `${read.name}`, look);
  const transducer = read.chain?.transducer === undefined ? undefined : look('transducers', read.chain.transducer);
  const mount = read.chain?.mount === undefined ? undefined : look('mounts', read.chain.mount);
  if (way === unread || transducer === unread || mount === unread) return unread;
  if (transducers.includes(unread as never) || mounts.includes(unread as never)) return unread;
  return {
    statement,
    way,
    ...(read.chain === undefined ? {} : { statedLength: read.chain.cableLength }),
    chosen: transducer === undefined || mount === undefined ? undefined : { transducer, mount },
    compared: { transducers, mounts } as PlantPoint['compared'],
    alarm: read.alarm,
    ...(read.limits === undefined ? {} : { limits: read.limits }),
    ...(read.shaft === undefined ? {} : { shaft: read.shaft.value }),
    ...(read.probes === undefined ? {} : { probes: read.probes }),
    ...(read.wiring === undefined ? {} : { wiring: read.wiring }),
    ...(read.window === undefined ? {} : { window: read.window }),
  };
}

type ChainRead = NonNullable<PointRead['chain']>;
type Look = <S extends Shelf>(shelf: S, name: WithPlace<string>) => Catalogue[S][number] | Unread;

function wayOf(read: ChainRead, of: string, look: Look): PlantPoint['way'] | Unread {
  const cable = look('cables', read.cable);
  const input = look('inputs', read.input);
  const stands = read.inLine ?? [];
  const inLine = stands.map((each) => look('supplies', each.part));
  const leads = stands.map((each) => (each.cable === undefined ? undefined : look('cables', each.cable)));
  if (cable === unread || input === unread || inLine.includes(unread) || leads.includes(unread)) return unread;
  const onward = leads.flatMap((cable, behind) => {
    if (cable === undefined || cable === unread) return [];
    const at = `${of}, behind ${stands[behind]!.part.value}`;
    return [{ behind, cable, length: answerOf<number>(stands[behind]!.cableLength, at, 'cable length') }];
  });
  return {
    cable,
    cableLength: answerOf(read.cableLength, of, 'cable length'),
    inLine: inLine as Exclude<(typeof inLine)[number], Unread>[],
    ...(onward.length === 0 ? {} : { onward }),
    ...(stands.some((each) => each.tag !== undefined) ? { tags: stands.map((each) => each.tag) } : {}),
    input,
  };
}

function partOn<S extends Shelf>(
  catalogue: Catalogue,
  shelf: S,
  { value, at }: WithPlace<string>,
  refuse: Refuse,
): Catalogue[S][number] | Unread {
  const result = partCalled(catalogue, shelf, value);
  if (!('nearest' in result)) return result.found;
  return refuse(at as Placed, {
    read: value,
    expected: `one of the ${shelf} of ${catalogue.title}`,
    ...(result.nearest === undefined ? {} : { suggestion: `Did you mean '${result.nearest}'?` }),
  });
}
