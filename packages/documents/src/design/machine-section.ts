import type { DesignedMachine, Plant } from '@soundpost/core';
import { figure } from '../drawing/figure.ts';
import { coincidenceSection } from '../machine/coincidence-section.ts';
import { elementTable, limitFacts, machineFacts } from '../machine/element-table.ts';
import { frequencySection } from '../machine/frequency-section.ts';
import { pointPlaceTable } from '../machine/point-place-table.ts';
import { positionTable } from '../machine/position-table.ts';
import { meetingSection, speedMapSection } from '../machine/speed-map-section.ts';
import { trainDrawing } from '../machine/train-drawing.ts';
import { type Html, html, named } from '../typesetting/html.ts';
import type { Section } from '../typesetting/section.ts';
import type { Setting } from '../typesetting/setting.ts';
import { pointSection } from './point-section.ts';

/** The train in true order with its points, to be looked at. */
export function trainFigure(machine: DesignedMachine, id: string, setting: Setting): Html {
  return figure(`${id}-train`, (width) => trainDrawing(machine, setting.showing, width), trainCaption);
}

const trainCaption =
  'The train in order, each shaft a centre line; not to scale. A number is a point, hung under the element it sits at: a pointer above it looks vertically, one beside it along the shaft, a second ring horizontally.';

/** A machine by itself: its train, its frequencies, what comes close among them, its limits. */
export function machineSheets(machine: DesignedMachine, id: string, setting: Setting): readonly Section[] {
  const train = html`${machineFacts(machine, setting)}
${trainFigure(machine, id, setting)}
${pointPlaceTable(machine)}
${elementTable(machine, setting)}`;
  return [
    { title: 'The train', body: train },
    { title: 'Frequencies', body: frequencySection(machine, setting) },
    { title: 'Speed map', body: speedMapSection(machine, `${id}-speeds`, setting) },
    { title: 'Coincidences', body: coincidenceSection(machine, setting) },
    { title: 'Limits', body: limitFacts(machine.limits, machine.stated.name, setting) },
    { title: 'Positions and directions', body: positionTable(machine) },
  ];
}

/** What a machine does over its whole range and where one measures on it: the sheets beside its train and its map. */
export function runningSheets(machine: DesignedMachine, setting: Setting): readonly Section[] {
  return [
    { title: 'Frequencies', body: frequencySection(machine, setting) },
    { title: 'Meetings over the whole range', body: meetingSection(machine, setting) },
    { title: 'Coincidences over the whole range', body: coincidenceSection(machine, setting) },
    { title: 'Limits', body: limitFacts(machine.limits, machine.stated.name, setting) },
    { title: 'Positions and directions', body: positionTable(machine) },
  ];
}

/** A machine, and then its points. */
export function machineSection(machine: DesignedMachine, plant: Plant, id: string, setting: Setting): Section {
  const { stated } = machine;
  const points = machine.points.map((point, index) => pointSection(point, plant, `${id}p${index + 1}`, setting));
  return {
    title: html`Machine ${named(stated.name)}: ${named(stated.title)}`,
    body: points.length === 0 ? html`<p>No measuring point is stated.</p>` : '',
    newSheet: true,
    within: [...machineSheets(machine, id, setting), ...points],
  };
}
