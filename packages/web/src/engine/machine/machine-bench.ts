import {
  type DesignedMachine,
  installations,
  kindOf,
  pointPlaces,
  type Showing,
  statuses,
  type Train,
} from '@soundpost/core';
import { machineFacts, markupOf, Openings, runningSheets, speedMapCaption, trainFigure } from '@soundpost/documents';
import { designedRow } from '../point-row.ts';
import type { FindingView, SheetView } from '../views.ts';
import { kindForms } from './kind-forms.ts';
import { sheetForms } from './sheet-forms.ts';
import { speedRange } from './speed-range.ts';
import type { MachineBench, OperationForm } from './views.ts';

/** Everything of a machine but what follows the speed under the hand. */
export function machineBench(
  machine: DesignedMachine,
  findings: readonly FindingView[],
  showing: Showing,
  written: unknown,
): MachineBench {
  const { stated } = machine;
  const places = pointPlaces(stated);
  return {
    name: stated.name,
    title: stated.title,
    train: markupOf(trainFigure(machine, 'machine', { showing })),
    points: machine.points.map((designed, index) => {
      const { number, on, seen, rotation } = places[index]!;
      return {
        number,
        row: designedRow(stated, designed, showing),
        at: on?.element,
        toldBy: on?.by,
        hears: designed.stated.statement.hears ?? [],
        seen,
        rotation,
      };
    }),
    findings,
    forms: sheetForms(stated, showing, written),
    shafts: stated.train.shafts.map((name) => ({ name, carries: carriedBy(stated.train, name) })),
    operation: operationOf(stated.train),
    kinds: kindForms(),
    installations,
    statuses,
    speed: speedRange(machine, showing),
    mapCaption: speedMapCaption,
    sheets: machineOpenings(machine, showing).sheets,
  };
}

/** The sheets of a machine beside its train and its map, and what their numbers open to. */
export function machineOpenings(
  machine: DesignedMachine,
  showing: Showing,
): { readonly sheets: readonly SheetView[]; readonly openings: Openings } {
  const openings = new Openings();
  const setting = { showing, opens: openings.opens };
  const sheets = [
    { name: 'facts', title: 'How it is stated', markup: markupOf(machineFacts(machine, setting)) },
    ...runningSheets(machine, setting).map(({ title, body }) => ({
      name: markupOf(title),
      title: markupOf(title),
      markup: markupOf(body),
    })),
  ];
  return { sheets, openings };
}

function carriedBy({ elements }: Train, shaft: string): string {
  return elements
    .filter((each) => Object.values<string>(each.shafts).includes(shaft))
    .map((each) => each.name)
    .join(', ');
}

function operationOf({ operation, elements }: Train): OperationForm {
  return {
    by: operation.by,
    of: operation.by === 'shaft' ? operation.shaft : operation.motor,
    motors: elements.filter((each) => kindOf(each).drive !== undefined).map((each) => each.name),
    states: operation.states.map((each) => each.name),
  };
}
