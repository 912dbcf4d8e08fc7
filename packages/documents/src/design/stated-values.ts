import {
  type AnyField,
  allowanceSheet,
  type Design,
  type Field,
  type Fields,
  fieldOf,
  kindOf,
  type Sheet,
  type Stated,
  words,
} from '@soundpost/core';
import { type ChainPart, chainParts } from '../chain/chain-parts.ts';

/** One value somebody stated, with its field. */
export interface StatedValue {
  readonly of: string;
  readonly what: string;
  readonly field: Field<unknown>;
  readonly entry: Stated<unknown>;
}

/** The values of a sheet, in the order of its fields. */
export function valuesOf({ of, values }: Sheet, fields: Fields): readonly StatedValue[] {
  return Object.entries(fields).flatMap(([key, field]: [string, AnyField]) => {
    const entry = values[key] as Stated<unknown> | undefined;
    return entry === undefined ? [] : [{ of, what: words(key), field: fieldOf(field), entry }];
  });
}

/** A part that stands in one chain or more, with the points it stands at. */
export interface PartInUse {
  readonly part: ChainPart;
  readonly at: readonly string[];
}

/** Every part of every chosen chain, once. */
export function partsInUse({ machines }: Design): readonly PartInUse[] {
  const found = new Map<string, { part: ChainPart; at: string[] }>();
  for (const { appraisal, point } of machines.flatMap((machine) => machine.points)) {
    if (appraisal === undefined) continue;
    for (const part of chainParts(appraisal.prediction.chain.parts)) {
      const key = `${part.role === 'in the line' ? 'supply' : part.role}/${part.name}`;
      const before = found.get(key);
      if (before === undefined) found.set(key, { part, at: [point.of] });
      else if (!before.at.includes(point.of)) before.at.push(point.of);
    }
  }
  return [...found.values()];
}

/** Everything the proof rests on that stands on a sheet: parts, elements of machines, allowances. */
export function allStatedValues(design: Design): readonly StatedValue[] {
  const elements = design.machines.flatMap((machine) =>
    machine.stated.train.elements.flatMap((element) =>
      valuesOf(element.sheet as Sheet, kindOf(element).sheet as Fields),
    ),
  );
  return [
    ...elements,
    ...partsInUse(design).flatMap(({ part }) => valuesOf(part.sheet, part.kind.dataSheet)),
    ...valuesOf(design.plant.allowances as Sheet, allowanceSheet),
  ];
}
