import {
  type DesignedMachine,
  type Fields,
  fieldOf,
  fixed,
  kindOf,
  type MachineElement,
  type MachineLimits,
  machineFactsSheet,
  type Sheet,
  type Stated,
  showLevel,
  showQuantity,
  showSpan,
  words,
} from '@soundpost/core';
import { typedNumber } from '../derivation/explained.ts';
import { opened } from '../derivation/opened.ts';
import { sheetFacts, withSource } from '../typesetting/answers.ts';
import { type Html, html, joined, named, type Piece } from '../typesetting/html.ts';
import { type Setting, unknown } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { boundaryWords, explainedBoundary } from './explained-limits.ts';

/** The train in order, each element with what is stated of it and how that is known. */
export function elementTable({ stated }: DesignedMachine, setting: Setting): Html {
  return table({
    caption: 'Elements in order',
    columns: [
      { head: 'Element', cell: (element: MachineElement) => named(element.name) },
      { head: 'Kind', cell: (element) => kindOf(element).name },
      { head: 'Stands on', cell: standsOn },
      {
        head: 'Stated',
        cell: (element) => statedWords(element.sheet as Sheet, kindOf(element).sheet as Fields, setting),
      },
    ],
    rows: stated.train.elements,
    folds: true,
    empty: 'No element is stated.',
  });
}

/** Limits of a machine or a point, with where they come from. */
export function limitFacts(limits: MachineLimits | undefined, at: string, setting: Setting): Html {
  if (limits === undefined) {
    return html`<p>No limits are stated for this machine; no zone and no set point follows from any table unasked.</p>`;
  }
  const { boundaries, title } = limits;
  const shown = boundaries.known
    ? (Object.keys(boundaryWords) as (keyof typeof boundaryWords)[]).map((key) => {
        const level = showLevel(boundaries.value[key], setting.showing);
        const opens = opened(level, explainedBoundary(limits, key, at, setting.showing), setting);
        return html`<dt>boundary ${boundaryWords[key]}</dt><dd>${opens}</dd>`;
      })
    : html`<dt>boundaries</dt><dd>${unknown(boundaries.missing)}</dd>`;
  return html`<dl class="facts">${shown}<dt>limits from</dt><dd>${title}</dd></dl>`;
}

/** What decides which limits apply, and how the machine is run. */
export function machineFacts({ stated }: DesignedMachine, setting: Setting): Html {
  const facts = sheetFacts(stated.facts as Sheet, machineFactsSheet, setting);
  return html`<dl class="facts">${facts}<dt>run by</dt><dd>${operation(stated.train.operation, stated.name, setting)}</dd></dl>`;
}

function operation(run: DesignedMachine['stated']['train']['operation'], at: string, setting: Setting): Piece {
  const { showing } = setting;
  const of =
    run.by === 'shaft' ? html`speed of shaft ${named(run.shaft)}` : html`line frequency of ${named(run.motor)}`;
  const name = run.by === 'shaft' ? 'shaft speed' : 'frequency';
  const typed = (what: string, entry: Extract<Stated<unknown>, { known: true }>, shown: string) =>
    opened(shown, () => typedNumber(what, `machine ${at}, operation`, entry, shown), setting);
  const stated = run.range;
  const range = stated.known ? typed('range', stated, showSpan(name, stated.value, showing)) : unknown();
  const states = run.states.map((state) => {
    const entry = { known: true, value: state.at, written: '' } as const;
    return html`${named(state.name)} ${typed(`state ${state.name}`, entry, showQuantity(name, state.at, showing))}`;
  });
  return html`${of}: ${range}${states.length === 0 ? undefined : html`; states: ${joined(states)}`}`;
}

function standsOn(element: MachineElement): Html {
  const roles = Object.entries<string>(element.shafts);
  return joined(
    roles.map(([role, shaft]) => {
      const where = shaft === fixed ? 'what does not turn' : named(shaft);
      return roles.length === 1 ? where : html`${role}: ${where}`;
    }),
  );
}

function statedWords({ of, values }: Sheet, fields: Fields, setting: Setting): Html {
  const all = Object.entries(fields).flatMap(([key, entry]) => {
    const value = values[key] as Stated<unknown> | undefined;
    return value === undefined
      ? []
      : [html`${words(key)} ${withSource(value, fieldOf(entry), of, words(key), setting)}`];
  });
  return joined(all, '; ');
}
