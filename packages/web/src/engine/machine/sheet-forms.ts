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
  optional,
  type PlantMachine,
  quantityField,
  type Showing,
  type Stated,
  spanField,
  stated,
  words,
} from '@soundpost/core';
import { writtenAt } from '../written-machine.ts';
import { rolesOf } from './kind-forms.ts';
import type { FieldForm, SheetForm } from './views.ts';

type Path = readonly (string | number)[];
type Values = Readonly<Record<string, Stated<unknown> | undefined>>;

/**
 * Every data sheet of a machine that is typed in place: its facts, how it is run, the speeds on its plates, each element
 * by its kind. `written` is the machine as its file writes it.
 */
export function sheetForms(machine: PlantMachine, showing: Showing, written?: unknown): readonly SheetForm[] {
  const at: Path = ['machines', machine.name];
  const { elements } = machine.train;
  const ground = { at, showing, written };
  return [
    form(ground, 'facts', 'The machine', '', '', machine.facts.values, machineFactsSheet, ['facts']),
    operationForm(machine, ground),
    platesForm(machine, ground),
    ...elements.map((element, index): SheetForm => {
      const kind = kindOf(element);
      const path = ['elements', element.name];
      const { values } = element.sheet;
      const shafts: Readonly<Record<string, string | undefined>> = element.shafts;
      return {
        ...form(
          ground,
          `element/${element.name}`,
          element.name,
          kind.name,
          standsOn(element),
          values,
          kind.sheet,
          path,
        ),
        element: {
          name: element.name,
          first: index === 0,
          last: index === elements.length - 1,
          roles: rolesOf(kind).map((each) => ({ ...each, shaft: shafts[each.role] ?? '' })),
        },
      };
    }),
  ];
}

interface Ground {
  readonly at: Path;
  readonly showing: Showing;
  readonly written: unknown;
}

function operationForm({ train: { operation } }: PlantMachine, ground: Ground): SheetForm {
  const ofShaft = operation.by === 'shaft';
  const field = ofShaft
    ? spanField('shaft speed', 'Speed of that shaft, lowest to highest', { example: '1480..1490 r/min' })
    : spanField('frequency', 'Line frequency, lowest to highest', { example: '25..50 Hz' });
  const key = ofShaft ? 'speed' : 'lineFrequency';
  const stands = ofShaft ? `speed of shaft ${operation.shaft}` : `line frequency of ${operation.motor}`;
  const fields: Fields = { [key]: field, wander: optional(wanderField) };
  const values = { [key]: operation.range, wander: operation.wander };
  const whole = form(ground, 'operation', 'How it is run', '', stands, values, fields, ['operation']);
  const stateField: Field<unknown> = ofShaft
    ? quantityField('shaft speed', 'Speed of that shaft in this state', { example: '1480 r/min' })
    : quantityField('frequency', 'Line frequency in this state', { example: '48 Hz' });
  const states = operation.states.map(({ name, at }) => ({
    ...fieldForm(name, optional(stateField), stated(at, ''), ground, ['operation', 'states', name]),
    key: `state ${name}`,
    words: `state ${name}`,
    plain: true,
    mayBeLeftOut: false,
  }));
  return { ...whole, fields: [...whole.fields, ...states] };
}

const wanderField = quantityField('fraction', 'How far the speed strays within one record, least to most', {
  example: '1 %',
});

/** What is stamped on a plate is held against what the train gives. */
function platesForm({ train: { shafts, plates = [] } }: PlantMachine, ground: Ground): SheetForm {
  const field = quantityField('shaft speed', 'Speed on the plate, held against what the train gives', {
    example: '1486 r/min',
  });
  const fields = shafts.map((shaft) => {
    const value = plates.find((each) => each.shaft === shaft)?.speed;
    const made = fieldForm(shaft, optional(field), value, ground, ['plates', shaft]);
    return { ...made, key: `plate ${shaft}`, words: `plate of ${shaft}` };
  });
  const summary = fields.flatMap(({ words, statement, shown }) =>
    statement.value === '' ? [] : [`${words} ${shown ?? statement.value}`],
  );
  return { key: 'plates', title: 'Speeds on plates', kind: '', stands: '', summary: summary.join(', '), fields };
}

function form(
  ground: Ground,
  key: string,
  title: string,
  kind: string,
  stands: string,
  values: Values,
  fields: Fields,
  path: Path,
): SheetForm {
  const all = Object.entries(fields)
    .filter(([, entry]) => !['curve', 'file'].includes(fieldOf(entry).type))
    .map(([name, entry]) => fieldForm(name, entry, values[name], ground, [...path, kebab(name)]));
  const summary = Object.entries(fields).flatMap(([name, entry]) => {
    const value = values[name];
    if (value === undefined) return [];
    return [`${words(name)} ${value.known ? fieldOf(entry).show(value.value, ground.showing) : 'unknown'}`];
  });
  return { key, title, kind, stands, summary: summary.join(', '), fields: all };
}

function fieldForm(
  name: string,
  entry: AnyField,
  value: Stated<unknown> | undefined,
  { at, showing, written: file }: Ground,
  path: Path,
): FieldForm {
  const field = fieldOf(entry);
  const typed = writtenAt(file, path);
  const told = isTold(typed) ? typed : {};
  const bounds = Array.isArray(told.between) ? told.between.map(String) : [];
  const left = isOptional(entry) && value?.known === false ? 'unknown' : '';
  const written = value?.known === true ? value.written || (typeof typed === 'string' ? typed : '') : left;
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
    mayBeBounded: ['quantity', 'level', 'count'].includes(field.type),
    plain: false,
    path: [...at, ...path],
    statement: {
      value: written,
      status: value?.known === true ? (value.status ?? '') : '',
      source: value?.known === true ? (value.source ?? '') : '',
      ...(value?.known === true ? {} : { ask: String(told.ask ?? ''), low: bounds[0] ?? '', high: bounds[1] ?? '' }),
    },
    shown: value?.known !== true || shown === written ? undefined : shown,
    unknown: value?.known === false ? unknownWords(value, field, showing) : undefined,
  };
}

function isTold(typed: unknown): typed is { readonly ask?: unknown; readonly between?: unknown } {
  return typeof typed === 'object' && typed !== null;
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
