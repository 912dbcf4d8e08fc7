import {
  type Fields,
  type FrequencyTable,
  fieldOf,
  kindOf,
  type MeasuringPoint,
  type Missing,
  type PlantMachine,
  type Stated,
  words,
} from '@soundpost/core';

/** Something nobody has stated yet, and who could. */
export interface Unknown extends Missing {
  readonly meaning?: string;
  readonly ask?: string;
}

/** What is not known of a machine: fields of its sheets that are stated as unknown or not at all. */
export function unknownOfMachine(machine: PlantMachine, table: FrequencyTable): readonly Unknown[] {
  const ofElements = machine.train.elements.flatMap((element) =>
    unknownInSheet(element.sheet, kindOf(element).sheet as Fields),
  );
  const ofLines = table.rows.flatMap((row) => (row.range.known ? [] : row.range.missing));
  return distinct([...ofElements, ...ofLines]);
}

interface AnySheet {
  readonly of: string;
  readonly values: Readonly<Record<string, unknown>>;
}

export function unknownInSheet(sheet: AnySheet, fields: Fields): readonly Unknown[] {
  return Object.entries(fields).flatMap(([name, entry]) => {
    const value = sheet.values[name] as Stated<unknown> | undefined;
    if (value === undefined || value.known) return [];
    const ask = value.ask === undefined ? {} : { ask: value.ask };
    return [{ of: sheet.of, what: words(name), meaning: fieldOf(entry).meaning, ...ask }];
  });
}

/** What is not known of a point: its own facts, and those of its targets. */
export function unknownOfPoint(point: MeasuringPoint): readonly Unknown[] {
  const surface = point.surfaceTemperature;
  const ofPoint: readonly Unknown[] = surface.known
    ? []
    : [{ of: point.of, what: 'surface temperature', ...(surface.ask === undefined ? {} : { ask: surface.ask }) }];
  const answers = point.targets.flatMap((target) => [
    target.frequencies,
    target.band,
    target.smallest,
    target.largest,
    target.largestAt,
    target.tolerance,
    ...(target.observable.kind === 'line' ? [target.resolution] : []),
  ]);
  const disturbances = point.disturbances.map((each) => each.level);
  const missing = [point.direction, ...answers, ...disturbances].flatMap((each) => (each.known ? [] : each.missing));
  return distinct([...ofPoint, ...missing]);
}

function distinct(unknowns: readonly Unknown[]): readonly Unknown[] {
  const byName = new Map<string, Unknown>();
  for (const each of unknowns) {
    const key = `${each.of}/${each.what}`;
    if (!byName.has(key)) byName.set(key, each);
  }
  return [...byName.values()];
}
