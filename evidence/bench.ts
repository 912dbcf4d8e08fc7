import {
  type Answer,
  answer,
  type Cable,
  type ChainParts,
  cableKinds,
  demand,
  type Field,
  type Fields,
  fieldOf,
  type Input,
  inputKinds,
  kindCalled,
  type MeasuringPoint,
  type Mount,
  measuringChain,
  mountKinds,
  notStated,
  observables,
  type Prediction,
  parseLevel,
  parseQuantity,
  parseSpan,
  parseTolerance,
  pointDecimals,
  prediction,
  type Reference,
  type Shelf,
  type Stated,
  type Supply,
  shelves,
  stated,
  supplyKinds,
  surroundingsSheet,
  type TargetStatement,
  type Transducer,
  transducerKinds,
} from '../packages/core/src/index.ts';
import { genericCatalogue } from './reading.ts';

/** A bench to try chains on: parts of the generic catalogue, changed field by field, and points stated in a few words. */

export type AnyPart = Transducer | Mount | Cable | Supply | Input;

/** The kinds that stand on each shelf. */
export const kindsOf = {
  transducers: transducerKinds,
  mounts: mountKinds,
  cables: cableKinds,
  supplies: supplyKinds,
  inputs: inputKinds,
} as const;

export const catalogue = genericCatalogue();

function onShelf(shelf: Shelf, name: string): AnyPart {
  const found = (catalogue[shelf] as readonly AnyPart[]).find((part) => part.name === name);
  if (found === undefined) throw new Error(`the generic catalogue has no ${name} among its ${shelf}`);
  return found;
}

export const transducer = (name: string) => onShelf('transducers', name) as Transducer;
export const mount = (name: string) => onShelf('mounts', name) as Mount;
export const cable = (name: string) => onShelf('cables', name) as Cable;
export const supply = (name: string) => onShelf('supplies', name) as Supply;
export const input = (name: string) => onShelf('inputs', name) as Input;

export function dataSheetOf(part: AnyPart): Fields {
  const lists = shelves.map((shelf) => kindsOf[shelf] as readonly { kind: string; dataSheet: Fields }[]);
  return kindCalled(lists.flat(), part.kind).dataSheet;
}

/** What stands in a field: a text as in a file, `unknown`, or nothing at all. */
export type Entry = string | undefined;

function entry<T>(field: Field<T>, text: Entry): Stated<T> {
  if (text === undefined || text === 'unknown') return notStated;
  return stated(field.read(text, pointDecimals), text);
}

/** The same part with some fields stated otherwise. An optional field set to undefined is left out. */
export function changed<P extends AnyPart>(part: P, entries: Readonly<Record<string, Entry>>): P {
  const dataSheet = dataSheetOf(part);
  const values: Record<string, Stated<unknown> | undefined> = { ...part.sheet.values };
  for (const [name, text] of Object.entries(entries)) {
    const field = dataSheet[name];
    if (field === undefined) throw new Error(`a ${part.kind} has no field ${name}`);
    values[name] = text === undefined && 'optional' in field ? undefined : entry(fieldOf(field), text);
  }
  return { ...part, sheet: { ...part.sheet, values } } as P;
}

/** A chain on the bench; what is not named is the usual: ACC-100 on a stud, 2 m of TSP, PORT-24. */
export function parts(
  change: Partial<Omit<ChainParts, 'cableLength'>> & { readonly metres?: number } = {},
): ChainParts {
  const { metres, ...rest } = change;
  return {
    transducer: transducer('ACC-100'),
    mount: mount('stud'),
    cable: cable('TSP'),
    cableLength: answer(metres ?? 2),
    inLine: [],
    input: input('PORT-24'),
    ...rest,
  };
}

export function predicted(change: Parameters<typeof parts>[0] = {}): Prediction {
  return prediction(measuringChain(parts(change)));
}

/** The value of an answer, or the names of what is missing as an error. */
export function known<T>(each: Answer<T> | undefined): T {
  if (each?.known === true) return each.value;
  throw new Error(`not known: ${each === undefined ? 'no answer' : JSON.stringify(each.missing)}`);
}

/** A target in a few words; every text is read as a file's would be. */
export interface TargetWords {
  readonly see: 'line' | 'overall' | 'burst' | 'position';
  /** Of a line its frequency, of the others the band. */
  readonly at?: Entry;
  readonly components?: readonly string[];
  readonly smallest?: Entry;
  readonly largest?: Entry;
  readonly largestAt?: Entry;
  readonly tolerance?: Entry;
  readonly spacing?: Entry;
  readonly reference?: Reference;
  readonly weight?: 'essential' | 'desirable';
  readonly within?: string;
}

function read<T>(text: Entry, reading: (text: string) => T): Stated<T> {
  return text === undefined || text === 'unknown' ? notStated : stated(reading(text), text);
}

const frequency = (text: string) => ({ is: 'number', value: parseQuantity(text, 'frequency') }) as const;
const level = (text: string) => parseLevel(text, ['acceleration', 'velocity', 'displacement']);

function statement(name: string, target: TargetWords): TargetStatement {
  const observe = observables.find((each) => each.kind === target.see)!;
  return {
    name,
    cause: 'on the bench',
    observe,
    reference: target.reference ?? 'casing',
    ...(target.see === 'line'
      ? { frequency: read(target.at, frequency) }
      : { band: read(target.at, (text) => parseSpan(text, 'frequency')) }),
    ...(target.components === undefined ? {} : { components: target.components.map((each) => read(each, frequency)) }),
    smallest: read(target.smallest, level),
    largest: read(target.largest, level),
    ...(target.largestAt === undefined ? {} : { largestAt: read(target.largestAt, frequency) }),
    tolerance: read('tolerance' in target ? target.tolerance : '±10 %', (text) => parseTolerance(text)),
    ...('spacing' in target ? { resolution: read(target.spacing, (text) => parseQuantity(text, 'frequency')) } : {}),
    weight: target.weight ?? 'essential',
    ...(target.within === undefined ? {} : { within: target.within }),
    origin: { by: 'stated', from: 'the bench', sources: [] },
  };
}

function around(entries: Readonly<Record<string, Entry>>): MeasuringPoint['surroundings'] {
  const fields: Fields = surroundingsSheet;
  const values = Object.fromEntries(
    Object.entries(entries).map(([name, text]) => {
      const field = fields[name];
      if (field === undefined) throw new Error(`the surroundings have no field ${name}`);
      return [name, entry(fieldOf(field), text)];
    }),
  );
  return { of: 'M-1/bench', values: values as MeasuringPoint['surroundings']['values'] };
}

/** A point of the bench with its targets by name, and knocks and the like by name as level and band. */
export function point(
  targets: Readonly<Record<string, TargetWords>>,
  surroundings: {
    readonly surface?: Entry;
    /** Fields of the surroundings, each as a file would state it. */
    readonly around?: Readonly<Record<string, Entry>>;
    readonly disturbances?: Readonly<Record<string, { readonly level: Entry; readonly band?: Entry }>>;
  } = {},
): MeasuringPoint {
  return demand(
    {
      name: 'bench',
      location: stated('bench'),
      direction: stated('horizontal'),
      installation: 'online',
      surfaceTemperature: read('surface' in surroundings ? surroundings.surface : '40 °C', (text) =>
        parseQuantity(text, 'temperature'),
      ),
      surroundings: around(surroundings.around ?? {}),
      targets: Object.entries(targets).map(([name, words]) => statement(name, words)),
      disturbances: Object.entries(surroundings.disturbances ?? {}).map(([name, each]) => ({
        name,
        level: read(each.level, level),
        ...('band' in each ? { band: read(each.band, (text) => parseSpan(text, 'frequency')) } : {}),
      })),
    },
    'M-1',
    () => answer(0),
  );
}
