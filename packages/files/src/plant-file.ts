import {
  allowanceSheet,
  answerOf,
  type Catalogue,
  decibelField,
  type LimitStatement,
  levelField,
  machineFactsSheet,
  motions,
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
  zoneTables,
} from '@soundpost/core';
import { catalogueOf, shelfParts } from './catalogue-file.ts';
import { listOf, named } from './collections.ts';
import { UnreadableFile } from './file-refusal.ts';
import { nameAt, type Place, type Placed } from './placed.ts';
import { pointParts, pointStatement } from './point-part.ts';
import { choice, made, plain, type Reader, text, type Unread, unread, type WithPlace, withPlace } from './reader.ts';
import { optionally, record } from './record.ts';
import { sheet } from './sheet.ts';
import { stated } from './stated.ts';
import { trainAt, trainParts } from './train-part.ts';
import { versionReader } from './version.ts';
import { plantVersions, versioned } from './versions.ts';

export const plantVersion = plantVersions.newest;

const nameOfPart = (meaning: string) => withPlace(text(meaning));

/** The way from the surface to the input, by the names of its parts. */
const chain = record('the measuring chain of a point', {
  transducer: optionally(nameOfPart('A transducer of the catalogue')),
  mount: optionally(nameOfPart('A mount of the catalogue')),
  cable: nameOfPart('A cable of the catalogue'),
  cableLength: stated(notBelowZeroField(quantityField('length', 'Length as walked on the route', { example: '85 m' }))),
  inLine: optionally(listOf(nameOfPart('A supply or resistance of the catalogue'), 'what stands in the line')),
  input: nameOfPart('An input of the catalogue'),
});

const compare = record('the parts to compare at a point; all of the catalogue where nothing is said', {
  transducers: optionally(listOf(nameOfPart('A transducer of the catalogue'), 'transducers to compare')),
  mounts: optionally(listOf(nameOfPart('A mount of the catalogue'), 'mounts to compare')),
});

const boundary = (which: string, example: string) =>
  optionally(stated(levelField(motions, `Boundary between zones ${which}`, { example })));

const limits: Reader<LimitStatement> = made(
  record('limits of a machine', {
    table: optionally(
      choice(
        zoneTables.map((each) => each.name),
        'A table of a standard, by its name here',
      ),
    ),
    aB: boundary('A and B', '3.2 mm/s rms 2-1000 Hz'),
    bC: boundary('B and C', '5.1 mm/s rms 2-1000 Hz'),
    cD: boundary('C and D', '8.5 mm/s rms 2-1000 Hz'),
    source: optionally(text('Where the limits stand: specification, edition, table')),
  }),
  ({ table, aB, bC, cD, source }, placed, refuse) => {
    const named = zoneTables.find((each) => each.name === table);
    if (named !== undefined && aB === undefined && bC === undefined && cD === undefined) {
      return { from: 'table' as const, table: named };
    }
    if (named === undefined && aB !== undefined && bC !== undefined && cD !== undefined && source !== undefined) {
      return { from: 'owner' as const, aB, bC, cD, source };
    }
    return refuse(placed, {
      read: [table && 'table', aB && 'a-b', bC && 'b-c', cD && 'c-d', source && 'source'].filter(Boolean).join(', '),
      expected: "either 'table', or the owner's 'a-b', 'b-c', 'c-d' and their 'source'; a boundary may be 'unknown'",
    });
  },
);

const alarm = record('when somebody is told', {
  baseline: stated(levelField(motions, 'Level when the machine was known to be well', { example: '1.9 mm/s rms' })),
  delay: stated(quantityField('time', 'How long a level must last', { example: '3 s' })),
});

const point = record('a measuring point', {
  ...pointParts,
  chain: optionally(chain),
  compare: optionally(compare),
  alarm: optionally(alarm),
});

const machine = made(
  record('a machine', {
    title: text('What it is', { example: 'Raw-water pump on a variable-speed drive' }),
    facts: sheet(machineFactsSheet, (map) => `machine ${map.path.split('/')[1]}`, 'what decides which limits apply'),
    ...trainParts,
    limits: optionally(limits),
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
  const points = read.points.map((each) => pointOf(each, catalogue, refuse));
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

function pointOf(read: PointRead, catalogue: Catalogue, refuse: Refuse): PlantPoint | Unread {
  const look = <S extends Shelf>(shelf: S, name: WithPlace<string>) => partOn(catalogue, shelf, name, refuse);
  const statement = pointStatement(read.name, read);
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
    chosen: transducer === undefined || mount === undefined ? undefined : { transducer, mount },
    compared: { transducers, mounts } as PlantPoint['compared'],
    alarm: read.alarm,
  };
}

type ChainRead = NonNullable<PointRead['chain']>;
type Look = <S extends Shelf>(shelf: S, name: WithPlace<string>) => Catalogue[S][number] | Unread;

function wayOf(read: ChainRead, of: string, look: Look): PlantPoint['way'] | Unread {
  const cable = look('cables', read.cable);
  const input = look('inputs', read.input);
  const inLine = (read.inLine ?? []).map((each) => look('supplies', each));
  if (cable === unread || input === unread || inLine.includes(unread)) return unread;
  return {
    cable,
    cableLength: answerOf(read.cableLength, of, 'cable length'),
    inLine: inLine as Exclude<(typeof inLine)[number], Unread>[],
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
