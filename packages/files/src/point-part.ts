import {
  aboveZeroField,
  type DisturbanceStatement,
  frequencyReferenceField,
  hazardousAreaSheet,
  installations,
  levelField,
  type Motion,
  motions,
  nearest,
  type Observable,
  observables,
  type PointStatement,
  quantityField,
  type RefusalReason,
  references,
  type Stated,
  spanField,
  surroundingsSheet,
  type TargetStatement,
  textField,
  toleranceField,
} from '@soundpost/core';
import { listOf, named } from './collections.ts';
import { entryOf, type Placed } from './placed.ts';
import { choice, made, type Reader, text, type Unread, unread, type WithPlace, withPlace } from './reader.ts';
import { optionally, record } from './record.ts';
import { sheet } from './sheet.ts';
import { stated } from './stated.ts';

const nothingIsNotZero = "Nothing is never read as zero; write 'unknown' where it is not known.";

const motionLevel = (meaning: string, example: string) => stated(levelField(motions, meaning, { example }));
const reference = (meaning: string) => stated({ ...frequencyReferenceField, meaning });

const observe: Reader<Observable> = made(
  choice(
    observables.map((each) => each.kind),
    'As what it is looked for',
  ),
  (word) => observables.find((each) => each.kind === word)!,
);

/** The value of a key, also where it stands with its origin; the whole where the key is missing. */
function valueAt(placed: Placed, key: string): Placed {
  const value = placed.kind === 'map' ? entryOf(placed, key)?.value : undefined;
  if (value?.kind === 'map') return entryOf(value, 'value')?.value ?? value;
  return value ?? placed;
}

/** What was written of a level of zero, or of a band that starts at zero or has no width. */
function emptyOf(stated: Stated<{ value: number } | { low: number; high: number }> | undefined): string | undefined {
  if (stated?.known !== true) return undefined;
  const { value } = stated;
  const empty = 'value' in value ? value.value <= 0 : value.low <= 0 || value.high <= value.low;
  return empty ? stated.written : undefined;
}

/** Smallest and largest level must be of one motion; asking for both is how two units get mixed. */
function oneMotion(smallest: Stated<{ quantity: Motion }>, largest: Stated<{ quantity: Motion }>): string | undefined {
  if (!smallest.known || !largest.known || smallest.value.quantity === largest.value.quantity) return undefined;
  return `'smallest' is ${smallest.value.quantity} and 'largest' is ${largest.value.quantity}`;
}

const target: Reader<Omit<TargetStatement, 'name'>> = made(
  record('a detection target', {
    cause: text('Why it is looked for', { example: 'spall on the inner ring' }),
    observe,
    of: optionally(choice(references, 'Whose motion; the casing where nothing is said')),
    frequency: optionally(reference('Frequency of a line')),
    band: optionally(
      stated(spanField('frequency', 'Band of an overall value or of bursts', { example: '2..1000 Hz' })),
    ),
    components: optionally(listOf(reference('A component'), 'frequencies an overall value is made of')),
    smallest: motionLevel('Smallest level that must be seen', '0.5 mm/s rms'),
    largest: motionLevel('Largest level that must be survived', '25 mm/s rms'),
    largestAt: optionally(reference('Frequency of the largest level')),
    tolerance: stated(toleranceField('How truly the amplitude must arrive')),
    resolution: optionally(
      stated(
        aboveZeroField(
          quantityField('frequency', 'Line spacing at which a line is looked for', { example: '0.3125 Hz' }),
          nothingIsNotZero,
        ),
      ),
    ),
    weight: optionally(choice(['essential', 'desirable'], 'Essential where nothing is said')),
    within: optionally(text('The target whose largest level already contains this motion')),
    source: optionally(text('Where the target comes from')),
  }),
  (read, placed, refuse) => {
    const refuseAt = (key: string, reason: RefusalReason): Unread => refuse(valueAt(placed, key), reason);
    const mixed = oneMotion(read.smallest, read.largest);
    if (mixed !== undefined) {
      return refuseAt('largest', {
        read: mixed,
        expected: 'both levels of one motion',
        suggestion: 'Convert one of them, and say at which frequency.',
      });
    }
    if (read.observe.kind === 'line' && read.frequency === undefined) {
      return refuse(placed, { read: '', expected: "'frequency' for a line; 'unknown' is an answer" });
    }
    if (read.observe.kind !== 'line' && read.observe.atRest === false && read.band === undefined) {
      return refuse(placed, { read: '', expected: `'band' for ${read.observe.meaning}; 'unknown' is an answer` });
    }
    for (const key of read.observe.atRest ? [] : (['smallest', 'largest', 'band'] as const)) {
      const empty = emptyOf(read[key]);
      if (empty === undefined) continue;
      return refuseAt(key, {
        read: empty,
        expected: key === 'band' ? 'a band from above zero to a higher frequency' : 'a level above zero',
        suggestion:
          key === 'band' ? 'Say where the band begins: a reading down to zero is drift and tilt.' : nothingIsNotZero,
      });
    }
    const { of, source, weight, ...rest } = read;
    return {
      ...rest,
      reference: of ?? 'casing',
      weight: weight ?? 'essential',
      origin: { by: 'stated' as const, from: source ?? 'plant file', sources: [] },
    };
  },
);

/** The targets of a point; the one that `within` names stands among them. */
const targets: Reader<readonly TargetStatement[]> = made(
  named(target, 'name', 'detection targets by name'),
  (read, placed, refuse) => {
    const names = read.map(({ name }) => name);
    const lost = read.filter(
      ({ name, within }) => within !== undefined && (within === name || !names.includes(within)),
    );
    for (const { name, within } of lost) {
      const others = names.filter((each) => each !== name);
      const near = nearest(within!, others);
      const entry = placed.kind === 'map' ? entryOf(placed, name)?.value : undefined;
      refuse(entry === undefined ? placed : valueAt(entry, 'within'), {
        read: within!,
        expected: `another target of this point${others.length === 0 ? '' : `: ${others.join(', ')}`}`,
        ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
      });
    }
    return lost.length === 0 ? read : unread;
  },
);

const disturbance: Reader<Omit<DisturbanceStatement, 'name'>> = record('motion to be survived, not measured', {
  level: motionLevel('Its largest level', '5 g peak'),
  band: optionally(stated(aboveZeroField(spanField('frequency', 'Where its energy lies', { example: '10..40 kHz' })))),
});

/** The classified area a machine or a point lies in. */
export const areaReader = sheet(
  hazardousAreaSheet,
  'hazardous area',
  'the hazardous area, as its drawing classifies it',
);

/** The keys of a measuring point that say what it must capture. */
export const pointParts = {
  location: stated(textField('Where on the machine', { example: 'pump, drive-end bearing housing' })),
  direction: stated(
    textField('Direction, with the side it is seen from', { example: 'horizontal, seen from the motor' }),
  ),
  installation: choice(installations, 'Whether the chain stays or is brought'),
  surfaceTemperature: stated(
    quantityField('temperature', 'Temperature of the surface at its hottest', { example: '65 °C' }),
  ),
  surroundings: optionally(sheet(surroundingsSheet, 'surroundings of the point', 'what stands around a point')),
  area: optionally(areaReader),
  hears: optionally(
    listOf(
      withPlace(text('An element or shaft of the train')),
      'what the point is there to listen to; all where left out',
    ),
  ),
  targets,
  disturbances: optionally(named(disturbance, 'name', 'what must be survived, by name')),
} as const;

type ReadPoint = Omit<PointStatement, 'name' | 'disturbances' | 'surroundings' | 'area' | 'hears'> & {
  readonly hears?: readonly WithPlace<string>[];
  readonly disturbances?: PointStatement['disturbances'];
  readonly surroundings?: PointStatement['surroundings'];
  readonly area?: NonNullable<PointStatement['area']>;
};

const nothingStated: PointStatement['surroundings'] = {
  of: 'surroundings of the point',
  values: {} as PointStatement['surroundings']['values'],
};

/** The statement of a point from what was read under its name. */
export function pointStatement(name: string, read: ReadPoint): PointStatement {
  const { location, direction, installation, surfaceTemperature, targets } = read;
  return {
    name,
    location,
    direction,
    installation,
    surfaceTemperature,
    surroundings: read.surroundings ?? nothingStated,
    ...(read.area === undefined ? {} : { area: read.area }),
    ...(read.hears === undefined ? {} : { hears: read.hears.map((each) => each.value) }),
    targets,
    disturbances: read.disturbances ?? [],
  };
}
