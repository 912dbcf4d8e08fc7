import {
  type Conductor,
  type Design,
  type DesignedMachine,
  type GroundLoop,
  loopOpenings,
  type Showing,
  showLoop,
  showQuantity,
  type WiringGraph,
  type WiringNode,
  wiredPoints,
  wiringGraph,
} from '@soundpost/core';
import { groundingDrawing, groundingOrder } from '../../wiring/grounding-drawing.ts';
import { type GroundingRow, type RowSurroundings, rowSurroundings } from '../../wiring/grounding-row.ts';
import { type Joint, jointsOf } from '../../wiring/joints.ts';
import { caution, drawnWhenSeen, heading, list, note } from '../blocks.ts';
import { answered, count, none, unknown, words } from '../cells.ts';
import { machineTitle } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import { madeSheet } from '../made-sheet.ts';
import type { Block, DocumentSheet } from '../record.ts';
import { numberColumn, setTable, textColumn } from '../set-table.ts';

/** So many points on one drawing are read at arm's length on A4. */
const pointsOnDrawing = 2;

/** What is earthed where over the plant, which loops that closes, and where each of them is opened. */
export const groundingDrawings = issuedKind({
  kind: 'grounding-drawing',
  title: 'Grounding drawing',
  readers: 'whoever lays earths and screens, and whoever looks for hum later',
  orientation: 'landscape',
  sheets: (design, showing) => {
    if (design.machines.every((machine) => machine.points.length === 0)) return [];
    const points = design.machines.flatMap(wiredPoints);
    const graph = wiringGraph(points);
    const openings = loopOpenings(graph, points);
    const around = rowSurroundings(graph, numbered(openings));
    const joints = jointsOf(graph);
    return [
      plantSheet(design, graph, around, openings, showing),
      ...design.machines.flatMap((machine) => machineSheet(machine, joints, around, showing)),
    ];
  },
});

/** Openings are counted over the plant; each conductor has a name of its own. */
function numbered(openings: readonly Conductor[]): ReadonlyMap<string, string> {
  return new Map(openings.map(({ name }, index) => [name, String(index + 1)]));
}

function plantSheet(
  design: Design,
  graph: WiringGraph,
  { openings, earthing }: RowSurroundings,
  opened: readonly Conductor[],
  showing: Showing,
): DocumentSheet {
  const { loops, machines } = design;
  const numberOf = new Map(loops.map((loop, index) => [loop, index + 1]));
  const points = machines.flatMap((machine) => machine.points);
  const without = points.filter((each) => each.appraisal === undefined).map((each) => each.point.of);
  const silent = points.filter((each) => each.appraisal !== undefined && each.stated.wiring === undefined);
  const area = points.find((each) => each.area !== undefined)?.area;
  return {
    title: 'Ground loops and earths of the plant',
    blocks: [
      ...(area === undefined ? [] : [caution(area.caution)]),
      setTable<GroundLoop>(
        'ground loops',
        'Independent ground loops, each with every opening that lies on its way',
        [
          numberColumn('Loop', '', (loop) => count(numberOf.get(loop)!), 0.5),
          textColumn('Through', ({ through }) => words(through === 'signal' ? 'a signal' : 'screens'), 0.9),
          textColumn('Way', (loop) => words(showLoop(loop)), 4),
          textColumn(
            'Resistance',
            ({ resistance }) => answered(resistance, (value) => words(showQuantity('resistance', value, showing))),
            1,
          ),
          textColumn(
            'Openings on its way',
            ({ members, byDesign }) =>
              words(
                byDesign
                  ? 'left closed by design, over a bonding conductor'
                  : members
                      .flatMap(({ name }) => openings.get(name) ?? [])
                      .toSorted((one, other) => Number(one) - Number(other))
                      .join(', '),
              ),
            1.6,
          ),
        ],
        loops,
        'The screens and earths as far as stated close no ground loop.',
      ),
      setTable<Conductor>(
        'openings',
        'Where to open: all of these together end every loop, and none of them is one too many',
        [
          textColumn('Opening', ({ name }) => words(openings.get(name)), 0.6),
          textColumn('Joint', ({ name }) => words(name), 3),
          textColumn('Opened by', ({ remedy }) => words(remedy), 3),
        ],
        opened,
        'Nothing is to be opened.',
      ),
      setTable<WiringNode>(
        'earth points',
        'Frames, boxes and bars',
        [
          textColumn('Place', ({ id }) => words(id), 3),
          textColumn('Is', ({ is }) => words(is), 1.4),
          textColumn(
            'Joined to',
            ({ id }) => words((earthing.get(id) ?? ['nothing, as far as stated']).join(', ')),
            2.4,
          ),
        ],
        graph.nodes.filter(({ is }) => earthPoints.has(is)),
        'No point has a chain, so nothing is wired.',
      ),
      ...(silent.length === 0
        ? []
        : [
            heading('Points of which nothing is stated of screen and earths'),
            ...list(silent.map((each) => each.point.of)),
          ]),
      ...(without.length === 0 ? [] : [heading('Points without a chain, so without wiring'), ...list(without)]),
      note(
        'Where the plant file states nothing of an input, one that is online is taken as joined to the earth of its cabinet unless a barrier earths its line, and one that is portable as floating; the return of a transducer follows the sheet of its type. Whoever knows better states it in the plant file.',
      ),
      note(
        'Protective conductors are meant to be meshed and are never opened to end a hum. Symbols are in the style of IEC 60617, from memory; sizes of conductors follow the code of the place.',
      ),
    ],
  };
}

const earthPoints: ReadonlySet<string> = new Set([
  'machine frame',
  'junction box',
  'barrier earth bar',
  'cabinet earth bar',
]);

function machineSheet(
  machine: DesignedMachine,
  joints: ReadonlyMap<string, readonly Joint[]>,
  around: RowSurroundings,
  showing: Showing,
): readonly DocumentSheet[] {
  const rows = groundingOrder(
    wiredPoints(machine).map((wired) => ({ wired, joints: joints.get(wired.point.of) ?? [] })),
  );
  if (rows.length === 0) return [];
  const sets = Array.from({ length: Math.ceil(rows.length / pointsOnDrawing) }, (_, set) =>
    rows.slice(set * pointsOnDrawing, (set + 1) * pointsOnDrawing),
  );
  const { name } = machine.stated;
  return [
    madeSheet(`Earths of ${machineTitle(machine)}`, [sets, around], (...from) => earthBlocks(name, ...from, showing)),
  ];
}

function earthBlocks(
  name: string,
  sets: readonly (readonly GroundingRow[])[],
  around: RowSurroundings,
  showing: Showing,
): readonly Block[] {
  return sets.flatMap((set, index): readonly Block[] => [
    drawnWhenSeen(
      `${name} ${index + 1}`,
      () => groundingDrawing(name, set, around),
      `Sheet ${index + 1} of ${sets.length} of this machine. A bar of one name is one bar on every sheet; numbers are those of the openings of the plant.`,
    ),
    jointTable(
      `${name} joints ${index + 1}`,
      set.flatMap((row) => row.joints),
      around,
      showing,
    ),
  ]);
}

function jointTable(name: string, joints: readonly Joint[], { openings }: RowSurroundings, showing: Showing): Block {
  return setTable<Joint>(
    name,
    'Every joint of the drawing',
    [
      textColumn('From', ({ from }) => words(from.id), 2.6),
      textColumn('To', ({ to }) => words(to.id), 2.6),
      textColumn('Is', (joint) => stateCell(joint), 1.8),
      textColumn(
        'Resistance',
        (joint) =>
          joint.state === 'joined'
            ? answered(joint.resistance, (value) => words(showQuantity('resistance', value, showing)))
            : none,
        1,
      ),
      textColumn('Opening', (joint) => words(joint.state === 'joined' ? openings.get(joint.name) : undefined), 0.8),
    ],
    joints,
    '',
  );
}

function stateCell(joint: Joint) {
  switch (joint.state) {
    case 'joined':
      return words('joined');
    case 'apart':
      return words(`kept apart: ${joint.by}`);
    case 'unknown':
      return joint.missing.length === 0 ? unknown([{ of: joint.point, what: 'joint' }]) : unknown(joint.missing);
  }
}
