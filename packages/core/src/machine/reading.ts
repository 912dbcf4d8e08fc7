import {
  type Field,
  type Fields,
  fieldOf,
  isOptional,
  kebab,
  nearest,
  notStated,
  pointDecimals,
  quantityField,
  Refusal,
  type Sheet,
  type Stated,
  type Status,
  spanField,
  stated,
  type Writing,
} from '../quantity/index.ts';
import type { AnyElementKind } from './element.ts';
import { elementKindCalled, type MachineElement, machineElementKinds } from './kinds.ts';
import { type NamedState, type Operation, type Train, train } from './train.ts';

/** A value as typed; `unknown` where nobody knows it; with how it is known where that was typed too. */
export type Typed = string | number | boolean | TypedWithStatus;
export interface TypedWithStatus {
  readonly value: string | number | boolean;
  readonly status?: Status;
  readonly source?: string;
  readonly ask?: string;
}

/** An element as typed: its kind, the shafts by role (or `on` alone), the fields of its sheet in kebab case. */
export type TypedElement = Readonly<Record<string, Typed>> & { readonly kind: string };

interface TypedRun {
  readonly wander?: Typed;
  readonly states?: Readonly<Record<string, string>>;
}

/** A train as typed: what a plant file holds of it, and what examples are written in. */
export interface TypedTrain {
  readonly of: string;
  readonly shafts: readonly string[];
  readonly elements: Readonly<Record<string, TypedElement>>;
  readonly operation:
    | ({ readonly shaft: string; readonly speed: Typed } & TypedRun)
    | ({ readonly motor: string; readonly frequency: Typed } & TypedRun);
  readonly plates?: Readonly<Record<string, Typed>>;
}

/** Reads a train as typed. Throws Refusal, naming the element and field. */
export function readTrain(typed: TypedTrain, writing: Writing = pointDecimals): Train {
  return train({
    of: typed.of,
    shafts: typed.shafts,
    elements: Object.entries(typed.elements).map(([name, element]) => readElement(typed.of, name, element, writing)),
    operation: readOperation(typed.operation, writing),
    plates: Object.entries(typed.plates ?? {}).map(([shaft, speed]) => ({
      shaft,
      speed: readStated(quantityField('shaft speed', 'Speed on a plate'), speed, `plates/${shaft}`, writing),
    })),
  });
}

/** Reads one element of a train. Throws Refusal. */
export function readElement(
  of: string,
  name: string,
  typed: TypedElement,
  writing: Writing = pointDecimals,
): MachineElement {
  const kind = elementKindCalled(typed.kind) ?? refusedKind(name, typed.kind);
  const fieldNames = Object.keys(kind.sheet as Fields).map(kebab);
  const carried: readonly string[] = kind.carriedPlaces ?? [];
  const places = [...kind.places, ...carried, ...(kind.onOneShaft === undefined ? [] : ['on'])];
  for (const key of Object.keys(typed)) {
    if (key === 'kind' || places.includes(key) || fieldNames.includes(key)) continue;
    const near = nearest(key, [...places, ...fieldNames]);
    throw new Refusal({
      read: `elements/${name}/${key}`,
      expected: `a field of a ${typed.kind}: ${[...places, ...fieldNames].join(', ')}`,
      ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
    });
  }
  const shafts = readShafts(name, kind, typed);
  const sheet = readSheet(kind.sheet as Fields, `${of}/${name}`, `elements/${name}`, typed, writing);
  return { name, kind: kind.kind, sheet, shafts } as unknown as MachineElement;
}

function refusedKind(name: string, kind: string): never {
  const kinds = machineElementKinds.map((each) => each.kind);
  const near = nearest(kind, kinds);
  throw new Refusal({
    read: `elements/${name}/kind=${kind}`,
    expected: `a kind of machine element: ${kinds.join(', ')}`,
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}

function readShafts(name: string, kind: AnyElementKind, typed: TypedElement): Readonly<Record<string, string>> {
  const alone = typed.on;
  if (alone !== undefined && kind.onOneShaft !== undefined) {
    const both = kind.places.find((role) => typed[role] !== undefined);
    if (both === undefined) return kind.onOneShaft(String(alone));
    throw new Refusal({
      read: `elements/${name}: on and ${both}`,
      expected: `either 'on' or ${kind.places.join(' and ')}`,
    });
  }
  const carried: readonly string[] = (kind.carriedPlaces ?? []).filter((role: string) => typed[role] !== undefined);
  return Object.fromEntries(
    [...kind.places, ...carried].map((role) => {
      const shaft = typed[role];
      if (typeof shaft === 'string' && shaft !== '') return [role, shaft];
      throw new Refusal({ read: '', expected: `'${role}' of elements/${name}: the name of a shaft` });
    }),
  );
}

/** Fills a sheet from typed fields; a required field that was not typed stands there as unknown. */
export function readSheet(
  fields: Fields,
  of: string,
  at: string,
  typed: Readonly<Record<string, Typed>>,
  writing: Writing = pointDecimals,
): Sheet {
  const values: Record<string, Stated<unknown> | undefined> = {};
  for (const [key, entry] of Object.entries(fields)) {
    const raw = typed[kebab(key)];
    if (raw !== undefined) values[key] = readStated(fieldOf(entry), raw, `${at}/${kebab(key)}`, writing);
    else values[key] = isOptional(entry) ? undefined : notStated;
  }
  return { of, values };
}

function readStated<T>(field: Field<T>, raw: Typed, at: string, writing: Writing): Stated<T> {
  const { value, status, source, ask } = typeof raw === 'object' ? raw : ({ value: raw } as TypedWithStatus);
  if (value === 'unknown' && field.type !== 'choice') return ask === undefined ? notStated : { known: false, ask };
  try {
    return stated(field.read(value, writing), String(value), status, source);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal({ ...error.reason, read: `${at}=${error.reason.read}` });
  }
}

function readOperation(typed: TypedTrain['operation'], writing: Writing): Operation {
  const wander = quantityField('fraction', 'How far the speed strays within a record');
  const straying =
    typed.wander === undefined ? {} : { wander: readStated(wander, typed.wander, 'operation/wander', writing) };
  if ('shaft' in typed) {
    const speed = quantityField('shaft speed', 'Speed of the shaft');
    return {
      by: 'shaft',
      shaft: typed.shaft,
      range: readStated(spanField('shaft speed', 'Speed of the shaft'), typed.speed, 'operation/speed', writing),
      ...straying,
      states: readStates(speed, typed.states, writing),
    };
  }
  const frequency = quantityField('frequency', 'Line frequency');
  return {
    by: 'line',
    motor: typed.motor,
    range: readStated(spanField('frequency', 'Line frequency'), typed.frequency, 'operation/frequency', writing),
    ...straying,
    states: readStates(frequency, typed.states, writing),
  };
}

function readStates(
  field: Field<number>,
  typed: Readonly<Record<string, string>> | undefined,
  writing: Writing,
): readonly NamedState[] {
  return Object.entries(typed ?? {}).map(([name, text]) => {
    const value = readStated(field, text, `operation/states/${name}`, writing);
    if (!value.known) throw new Refusal({ read: `operation/states/${name}=${text}`, expected: field.expected });
    return { name, at: value.value };
  });
}
