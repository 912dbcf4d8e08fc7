import {
  type DesignedMachine,
  type DesignedPoint,
  type Fields,
  kindOf,
  type MachineElement,
  machineFactsSheet,
  type PointPlace,
  pointPlaces,
  type Sheet,
  type Showing,
  showLevel,
  showTolerance,
  type Target,
  theMissing,
} from '@soundpost/core';
import { amplitudeChart } from '../../chain/amplitude-chart.ts';
import { trainDrawing } from '../../machine/train-drawing.ts';
import { drawnWhenSeen, facts, paragraph } from '../blocks.ts';
import { answered, answerText, count, levelCell, numberIn, statedCell, words } from '../cells.ts';
import { machineTitle } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import { lineOfCable } from '../line-of-cable.ts';
import { madeSheet } from '../made-sheet.ts';
import type { Block, DocumentSheet } from '../record.ts';
import { measureColumn, numberColumn, setTable, textColumn } from '../set-table.ts';
import { statedFacts } from '../stated-facts.ts';

/** Each machine with its train and where one measures on it, then each of its points with what it must capture. */
export const machineAndPointSheets = issuedKind({
  kind: 'machine-and-point-sheets',
  title: 'Machine and point sheets',
  readers: 'whoever stands at the machine: where each point is, which way it looks and what it is there for',
  orientation: 'portrait',
  sheets: ({ machines }, showing) =>
    machines.flatMap((machine): readonly DocumentSheet[] => [
      madeSheet(machineTitle(machine), [machine], (each) => machineBlocks(each, showing)),
      ...machine.points.map((point) =>
        madeSheet(`Point ${point.point.of}`, [point], (each) => pointBlocks(each, showing)),
      ),
    ]),
});

const trainCaption =
  'The train in order, each shaft a centre line; not to scale. A number is a point, hung under the element it sits at: a pointer above it looks vertically, one beside it along the shaft, a second ring horizontally.';

function machineBlocks(machine: DesignedMachine, showing: Showing): readonly Block[] {
  const { stated, limits } = machine;
  return [
    facts([...statedFacts(stated.facts as Sheet, machineFactsSheet, showing), ...limitFacts(limits, showing)]),
    drawnWhenSeen(`${stated.name} train`, () => trainDrawing(machine, showing, 'wide'), trainCaption),
    placeTable(machine),
    setTable<MachineElement>(
      `${stated.name} elements`,
      'Elements in order',
      [
        textColumn('Element', ({ name }) => words(name), 1.4),
        textColumn('Kind', (element) => words(kindOf(element).name), 1.6),
        textColumn('Stated, and how it is known', (element) => words(elementWords(element, showing)), 6),
      ],
      stated.train.elements,
      'No element is stated.',
    ),
  ];
}

function elementWords(element: MachineElement, showing: Showing): string {
  return statedFacts(element.sheet as Sheet, kindOf(element).sheet as Fields, showing)
    .map(([term, value]) => `${term} ${value}`)
    .join('; ');
}

function limitFacts(limits: DesignedMachine['limits'], showing: Showing): readonly (readonly [string, string])[] {
  if (limits === undefined) return [['limits', 'none stated; no zone and no set point follows from any table unasked']];
  const { boundaries, title } = limits;
  const names = { ab: 'A/B', bc: 'B/C', cd: 'C/D' } as const;
  const told = boundaries.known
    ? (Object.keys(names) as (keyof typeof names)[]).map(
        (key) => [`boundary ${names[key]}`, showLevel(boundaries.value[key], showing)] as const,
      )
    : [['boundaries', `unknown: ${theMissing(boundaries.missing)}`] as const];
  return [...told, ['limits from', title]];
}

function placeTable({ stated }: DesignedMachine): Block {
  const points = new Map(stated.points.map(({ statement }) => [statement.name, statement]));
  return setTable<PointPlace>(
    `${stated.name} places`,
    'Points in the drawing: as stated, and by what each was placed',
    [
      numberColumn('No.', '', ({ number }) => count(number), 0.4),
      textColumn('Point', ({ name }) => words(name), 2),
      textColumn('Location', ({ name }) => statedCell(points.get(name)?.location, name, 'location', words), 2.4),
      textColumn('Direction', ({ name }) => statedCell(points.get(name)?.direction, name, 'direction', words), 2),
      textColumn(
        'At',
        ({ on }) => words(on === undefined ? 'place not stated on one element' : `${on.element}, told by ${on.by}`),
        2,
      ),
      textColumn('Rotation', ({ rotation }) => words(rotation ?? 'not stated'), 1.4),
    ],
    pointPlaces(stated),
    'No measuring point is stated.',
  );
}

const chartCaption =
  'Every level stands where a sine of that level would, as velocity (rms); acceleration is read on the falling lines, displacement on the rising ones. A bar or box reaches from what must be seen to what must be survived; the full line is the noise floor, the dash-dotted one the ceiling.';

function pointBlocks(designed: DesignedPoint, showing: Showing): readonly Block[] {
  const { point, stated, appraisal } = designed;
  return [
    facts([
      ['location', point.location],
      ['direction', answerText(point.direction, (direction) => direction)],
      ['installation', point.installation],
      ['chain', appraisal?.prediction.chain.of ?? 'none chosen'],
      ['line', appraisal === undefined ? undefined : lineOfCable(appraisal.prediction.chain, showing)],
      [
        'remark on the wiring',
        stated.wiring?.values.remark?.known === true ? stated.wiring.values.remark.value : undefined,
      ],
    ]),
    ...(point.targets.length === 0 ? [paragraph('No target is stated, so nothing is asked of this point.')] : []),
    setTable<Target>(
      `${point.of} demand`,
      'What it must capture',
      [
        textColumn('Target', ({ name }) => words(name), 1.6),
        textColumn('Cause', ({ cause }) => words(cause), 2.4),
        numberColumn(
          'From',
          'Hz',
          ({ band }) => answered(band, ({ low }) => numberIn('Hz', 'frequency', low, showing)),
          0.8,
        ),
        numberColumn(
          'To',
          'Hz',
          ({ band }) => answered(band, ({ high }) => numberIn('Hz', 'frequency', high, showing)),
          0.8,
        ),
        measureColumn('Must be seen', ({ smallest }) => answered(smallest, (level) => levelCell(level, showing)), 1.3),
        measureColumn(
          'Must be survived',
          ({ largest }) => answered(largest, (level) => levelCell(level, showing)),
          1.3,
        ),
        textColumn(
          'Tolerance',
          ({ tolerance }) => answered(tolerance, (value) => words(showTolerance(value, showing))),
          1,
        ),
        textColumn('Weight', ({ weight }) => words(weight), 0.8),
      ],
      point.targets,
      'No target is stated.',
    ),
    drawnWhenSeen(`${point.of} chart`, () => amplitudeChart(designed, showing, 'wide'), chartCaption),
  ];
}
