import { cableKinds } from '../chain/cable/kinds.ts';
import type { ChainParts } from '../chain/chain.ts';
import { inputKinds } from '../chain/input/kinds.ts';
import { mountKinds } from '../chain/mount/kinds.ts';
import { kindCalled, type PartKind } from '../chain/part-kind.ts';
import { supplyKinds } from '../chain/supply/kinds.ts';
import { transducerKinds } from '../chain/transducer/kinds.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Target } from '../demand/target.ts';
import {
  type Answer,
  type Field,
  fieldOf,
  type Level,
  levelField,
  type Missing,
  type Motion,
  motions,
  quantityField,
  type Sheet,
  type Stated,
  type Tolerance,
  toleranceField,
  words,
} from '../quantity/index.ts';

/** A point with one chain: everything a verdict rests on. */
export interface Subject {
  readonly point: MeasuringPoint;
  readonly parts: ChainParts;
}

/** A number the verdict may rest on: what it is, its value, and the subject with that value moved by so many decades. */
export interface Assumption {
  readonly of: string;
  readonly what: string;
  readonly shown: string;
  /** The value as shown after it has been moved. */
  shownAt(decades: number): string;
  moved(subject: Subject, decades: number): Subject;
}

/** Every number that was stated for a point and its chain, each movable by itself. */
export function assumptions({ point, parts }: Subject): readonly Assumption[] {
  return [...ofParts(parts), ...ofTheWay(parts), ...ofThePoint(point), ...point.targets.flatMap(ofTarget)];
}

interface PlacedPart {
  readonly part: { readonly kind: string; readonly name: string; readonly sheet: unknown };
  readonly kinds: readonly PartKind[];
  replaced(subject: Subject, sheet: unknown): Subject;
}

function placedParts(parts: ChainParts): readonly PlacedPart[] {
  const single = (key: 'transducer' | 'mount' | 'cable' | 'input', kinds: readonly unknown[]): PlacedPart => ({
    part: parts[key],
    kinds: kinds as readonly PartKind[],
    replaced: (subject, sheet) => ({
      ...subject,
      parts: { ...subject.parts, [key]: { ...subject.parts[key], sheet } } as ChainParts,
    }),
  });
  return [
    single('transducer', transducerKinds),
    single('mount', mountKinds),
    single('cable', cableKinds),
    single('input', inputKinds),
    ...parts.inLine.map(
      (part, index): PlacedPart => ({
        part,
        kinds: supplyKinds as unknown as readonly PartKind[],
        replaced: (subject, sheet) => ({
          ...subject,
          parts: {
            ...subject.parts,
            inLine: subject.parts.inLine.map((each, at) => (at === index ? ({ ...each, sheet } as typeof each) : each)),
          },
        }),
      }),
    ),
  ];
}

function ofParts(parts: ChainParts): readonly Assumption[] {
  return placedParts(parts).flatMap(({ part, kinds, replaced }) => {
    const sheet = part.sheet as Sheet;
    return Object.entries(kindCalled(kinds, part.kind).dataSheet).flatMap(([name, entry]) => {
      const field = fieldOf(entry);
      const value = sheet.values[name] as Stated<unknown> | undefined;
      if (field.varied === undefined || value?.known !== true) return [];
      const put = (subject: Subject, decades: number) =>
        replaced(subject, {
          ...sheet,
          values: { ...sheet.values, [name]: { ...value, value: field.varied!(value.value, decades) } },
        });
      return [assumption(sheet.of, words(name), field, value.value, put)];
    });
  });
}

/** A value somebody could not state, with the bounds it is believed to lie between, and the subject with it filled in. */
export interface OpenValue {
  readonly of: string;
  readonly what: string;
  readonly ask: string | undefined;
  readonly between: { readonly low: string; readonly high: string };
  filled(subject: Subject, end: 'low' | 'high'): Subject;
}

/** Every value a part of the chain should state and does not. */
export function unstatedOf(parts: ChainParts): readonly Missing[] {
  return placedParts(parts).flatMap(({ part, kinds }) => {
    const sheet = part.sheet as Sheet;
    return Object.entries(kindCalled(kinds, part.kind).dataSheet).flatMap(([name]) => {
      const entry = sheet.values[name] as Stated<unknown> | undefined;
      return entry === undefined || entry.known ? [] : [{ of: sheet.of, what: words(name) }];
    });
  });
}

/** Every unknown of a chain and of its surface that has bounds. */
export function openValues({ point, parts }: Subject): readonly OpenValue[] {
  return [...openOfParts(parts), ...openSurface(point)];
}

function openOfParts(parts: ChainParts): readonly OpenValue[] {
  return placedParts(parts).flatMap(({ part, kinds, replaced }) => {
    const sheet = part.sheet as Sheet;
    return Object.entries(kindCalled(kinds, part.kind).dataSheet).flatMap(([name, entry]) =>
      openValue(
        sheet.of,
        words(name),
        fieldOf(entry),
        sheet.values[name] as Stated<unknown> | undefined,
        (subject, value) =>
          replaced(subject, {
            ...sheet,
            values: { ...sheet.values, [name]: { known: true, value, written: 'bound' } },
          }),
      ),
    );
  });
}

function openSurface(point: MeasuringPoint): readonly OpenValue[] {
  return openValue(point.of, 'surface temperature', temperatureField, point.surfaceTemperature, (subject, value) => ({
    ...subject,
    point: { ...subject.point, surfaceTemperature: { known: true, value, written: 'bound' } },
  }));
}

function openValue<T>(
  of: string,
  what: string,
  field: Field<T>,
  entry: Stated<T> | undefined,
  put: (subject: Subject, value: T) => Subject,
): readonly OpenValue[] {
  if (entry === undefined || entry.known || entry.between === undefined) return [];
  const { between, ask } = entry;
  return [
    {
      of,
      what,
      ask,
      between: { low: field.show(between.low), high: field.show(between.high) },
      filled: (subject, end) => put(subject, between[end]),
    },
  ];
}

function assumption<T>(
  of: string,
  what: string,
  field: Field<T>,
  value: T,
  moved: (subject: Subject, decades: number) => Subject,
): Assumption {
  return {
    of,
    what,
    get shown() {
      return field.show(value);
    },
    shownAt: (decades) => field.show(field.varied!(value, decades)),
    moved,
  };
}

const lengthField = quantityField('length', 'Length of the cable');
const temperatureField = quantityField('temperature', 'Temperature of the surface');
const motionField = levelField(motions, 'A level');
const shareField = toleranceField('A tolerance');
const spacingField = quantityField('frequency', 'Line spacing');

function ofTheWay(parts: ChainParts): readonly Assumption[] {
  if (!parts.cableLength.known) return [];
  const { value } = parts.cableLength;
  const put = (subject: Subject, decades: number): Subject => ({
    ...subject,
    parts: { ...subject.parts, cableLength: { known: true, value: value * 10 ** decades } },
  });
  return [assumption(parts.cable.sheet.of, 'length', lengthField as Field<number>, value, put)];
}

function ofThePoint(point: MeasuringPoint): readonly Assumption[] {
  const surface = point.surfaceTemperature;
  if (!surface.known) return [];
  const put = (subject: Subject, decades: number): Subject => ({
    ...subject,
    point: {
      ...subject.point,
      surfaceTemperature: { ...surface, value: temperatureField.varied!(surface.value, decades) },
    },
  });
  return [assumption(point.of, 'surface temperature', temperatureField, surface.value, put)];
}

function ofTarget(target: Target): readonly Assumption[] {
  const of = `target ${target.name}`;
  const entry = <T>(what: string, key: keyof Target, field: Field<T>, answered: Answer<T>): readonly Assumption[] => {
    if (!answered.known) return [];
    const put = (subject: Subject, decades: number): Subject => ({
      ...subject,
      point: {
        ...subject.point,
        targets: subject.point.targets.map((each) =>
          each.name === target.name
            ? { ...each, [key]: { known: true, value: field.varied!(answered.value, decades) } }
            : each,
        ),
      },
    });
    return [assumption(of, what, field, answered.value, put)];
  };
  return [
    ...entry<Level<Motion>>('smallest level', 'smallest', motionField, target.smallest),
    ...entry<Level<Motion>>('largest level', 'largest', motionField, target.largest),
    ...entry<Tolerance>('tolerance', 'tolerance', shareField, target.tolerance),
    ...entry<number>('line spacing', 'resolution', spacingField as unknown as Field<number>, target.resolution),
  ];
}
