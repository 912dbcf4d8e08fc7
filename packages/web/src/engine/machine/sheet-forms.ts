import {
  type AnyField,
  type Field,
  type Fields,
  fieldOf,
  fixed,
  isOptional,
  kebab,
  kindOf,
  type MachineElement,
  machineFactsSheet,
  type PlantMachine,
  type Showing,
  type Stated,
  spanField,
  words,
} from '@soundpost/core';
import type { FieldForm, SheetForm } from './views.ts';

type Path = readonly (string | number)[];
type Values = Readonly<Record<string, Stated<unknown> | undefined>>;

/** Every data sheet of a machine that is typed in place: its facts, how it is run, each element by its kind. */
export function sheetForms(machine: PlantMachine, showing: Showing): readonly SheetForm[] {
  const at: Path = ['machines', machine.name];
  return [
    form('facts', 'The machine', '', '', machine.facts.values, machineFactsSheet, [...at, 'facts'], showing),
    operationForm(machine, [...at, 'operation'], showing),
    ...machine.train.elements.map((element) => {
      const kind = kindOf(element);
      const path = [...at, 'elements', element.name];
      const key = `element/${element.name}`;
      return form(key, element.name, kind.name, standsOn(element), element.sheet.values, kind.sheet, path, showing);
    }),
  ];
}

function operationForm({ train: { operation } }: PlantMachine, at: Path, showing: Showing): SheetForm {
  const ofShaft = operation.by === 'shaft';
  const field = ofShaft
    ? spanField('shaft speed', 'Speed of that shaft, lowest to highest', { example: '1480..1490 r/min' })
    : spanField('frequency', 'Line frequency, lowest to highest', { example: '25..50 Hz' });
  const key = ofShaft ? 'speed' : 'lineFrequency';
  const stands = ofShaft ? `speed of shaft ${operation.shaft}` : `line frequency of ${operation.motor}`;
  const fields: Fields = { [key]: field };
  return form('operation', 'How it is run', '', stands, { [key]: operation.range }, fields, at, showing);
}

function form(
  key: string,
  title: string,
  kind: string,
  stands: string,
  values: Values,
  fields: Fields,
  path: Path,
  showing: Showing,
): SheetForm {
  const all = Object.entries(fields)
    .filter(([, entry]) => !['curve', 'file'].includes(fieldOf(entry).type))
    .map(([name, entry]) => fieldForm(name, entry, values[name], path, showing));
  const summary = Object.entries(fields).flatMap(([name, entry]) => {
    const value = values[name];
    if (value === undefined) return [];
    return [`${words(name)} ${value.known ? fieldOf(entry).show(value.value, showing) : 'unknown'}`];
  });
  return { key, title, kind, stands, summary: summary.join(', '), fields: all };
}

function fieldForm(
  name: string,
  entry: AnyField,
  value: Stated<unknown> | undefined,
  path: Path,
  showing: Showing,
): FieldForm {
  const field = fieldOf(entry);
  const written = value?.known === true ? value.written : '';
  const shown = value?.known === true ? field.show(value.value, showing) : '';
  return {
    key: kebab(name),
    words: words(name),
    symbol: field.symbol,
    meaning: field.meaning,
    expected: field.expected,
    example: field.example,
    choices: choicesOf(field),
    mayBeLeftOut: isOptional(entry),
    path: [...path, kebab(name)],
    statement: {
      value: written,
      status: value?.known === true ? (value.status ?? '') : '',
      source: value?.known === true ? (value.source ?? '') : '',
    },
    shown: shown === written ? undefined : shown,
    unknown: value?.known === false ? unknownWords(value, field, showing) : undefined,
  };
}

function choicesOf({ type, schema }: Field<unknown>): readonly string[] | undefined {
  if (type === 'flag') return ['yes', 'no'];
  return type === 'choice' && Array.isArray(schema.enum) ? schema.enum.map(String) : undefined;
}

function unknownWords(value: Stated<unknown> & { known: false }, field: Field<unknown>, showing: Showing): string {
  const { ask, between } = value;
  return [
    'unknown',
    ...(between === undefined
      ? []
      : [`believed between ${field.show(between.low, showing)} and ${field.show(between.high, showing)}`]),
    ...(ask === undefined ? [] : [`ask ${ask}`]),
  ].join('; ');
}

function standsOn(element: MachineElement): string {
  const roles = Object.entries<string>(element.shafts);
  return roles
    .map(([role, shaft]) => {
      const where = shaft === fixed ? 'what does not turn' : shaft;
      return roles.length === 1 ? `on ${where}` : `${role} ${where}`;
    })
    .join(', ');
}
