import { type Design, type DesignedMachine, type Showing, type TerminalVoltage, wiredPoints } from '@soundpost/core';
import { heading, list, note, paragraph } from '../blocks.ts';
import { answered, none, numberIn, unknown, words } from '../cells.ts';
import { machineTitle } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import { madeSheet } from '../made-sheet.ts';
import type { Block, DocumentSheet, SetTable } from '../record.ts';
import { blankColumn, numberColumn, setTable, type TableColumn, textColumn } from '../set-table.ts';
import { type TerminalRow, terminalRows } from '../terminal-rows.ts';

/** Every terminal with polarity, screen and expected direct voltage: loop by loop, and box by box where tags are stated. */
export const terminalPlan = issuedKind({
  kind: 'terminal-plan',
  title: 'Junction-box and terminal plan',
  readers: 'whoever terminates the cables, and whoever stands before an open box with a meter',
  orientation: 'landscape',
  sheets: (design, showing) => [...machineSheets(design, showing), ...boxSheets(design, showing)],
});

function rowsOf(machine: DesignedMachine): readonly (readonly TerminalRow[])[] {
  const wired = new Map(wiredPoints(machine).map((each) => [each.point.of, each]));
  return machine.points.flatMap((designed) => {
    const found = wired.get(designed.point.of);
    return found === undefined ? [] : [terminalRows(designed, found)];
  });
}

function machineSheets({ machines }: Design, showing: Showing): readonly DocumentSheet[] {
  return machines
    .filter((machine) => machine.points.length > 0)
    .map((machine) =>
      madeSheet(`Loops of ${machineTitle(machine)}`, [machine], (each) => machineBlocks(each, showing)),
    );
}

function machineBlocks(machine: DesignedMachine, showing: Showing): readonly Block[] {
  const loops = rowsOf(machine);
  const without = machine.points.filter((each) => each.appraisal === undefined).map((each) => each.point.of);
  return [
    ...loops.map((rows): SetTable => terminalTable(rows, `${rows[0]!.point} plan`, `Loop ${rows[0]!.point}`, showing)),
    ...(without.length === 0 ? [] : [heading('Points without a chain, so without terminals'), ...list(without)]),
    ...(loops.length === 0 ? [] : notes),
  ];
}

/** Channels of one box carry its tag and a number behind a stroke: `ZB-201/1` is in ZB-201. */
function boxOf(tag: string): string {
  return tag.replace(/\/[^/]*$/, '');
}

function boxSheets({ machines }: Design, showing: Showing): readonly DocumentSheet[] {
  const tagged = machines
    .flatMap(rowsOf)
    .flat()
    .filter((each) => each.tag !== undefined);
  const boxes = [...new Set(tagged.map((each) => boxOf(each.tag!)))];
  return boxes.map((box) => {
    const rows = tagged.filter((each) => boxOf(each.tag!) === box);
    return {
      title: `Box ${box}`,
      blocks: [
        paragraph(`Loops in ${box}: ${[...new Set(rows.map((each) => each.point))].join(', ')}.`),
        terminalTable(rows, `${box} terminals`, `Every terminal in ${box}`, showing, true),
        ...notes,
      ],
    };
  });
}

const states = ['at rest', 'at 4 mA', 'at 20 mA'] as const;

function terminalTable(
  rows: readonly TerminalRow[],
  name: string,
  caption: string,
  showing: Showing,
  ofBox = false,
): SetTable {
  const present = states.filter((state) =>
    rows.some(({ expected }) => typeof expected !== 'string' && expected.some((each) => each.state === state)),
  );
  const shown = present.length === 0 ? (['at rest'] as const) : present;
  return setTable<TerminalRow>(
    name,
    caption,
    [
      ...(ofBox ? [textColumn<TerminalRow>('Loop', ({ point }) => words(point), 2)] : []),
      textColumn('Terminal', ({ terminal }) => words(terminal), 1.8),
      textColumn('Core', ({ core }) => words(core), 0.8),
      textColumn('Polarity', ({ polarity }) => words(polarity), 0.8),
      blankColumn('Number', 0.8),
      textColumn('Comes in', ({ comesIn }) => comesIn, 1.6),
      textColumn('Goes on', ({ goesOn }) => goesOn, 1.6),
      textColumn('Earth', ({ earth }) => earth, 1.6),
      ...shown.flatMap((state) => [voltageColumn(state, 'low', showing), voltageColumn(state, 'high', showing)]),
    ],
    rows,
    '',
  );
}

function voltageColumn(
  state: TerminalVoltage['state'],
  end: 'low' | 'high',
  showing: Showing,
): TableColumn<TerminalRow> {
  const head = `${end === 'low' ? 'Lowest' : 'Highest'} ${state}`;
  return numberColumn(head, 'V', ({ expected, point, terminal, core }) => {
    if (expected === 'reference') return none;
    const found = expected === 'not known' ? undefined : expected.find((each) => each.state === state);
    if (found !== undefined) return answered(found.voltage, (span) => numberIn('V', 'voltage', span[end], showing));
    // Loops of both sorts may share a box: what another sort of loop tells does not apply to this one.
    if (expected !== 'not known') return none;
    return unknown([{ of: point, what: `direct voltage of the core ${core} at ${terminal}` }]);
  });
}

const notes: readonly Block[] = [
  note(
    'Voltages are those of the core against the return or common of its loop, of a supply its + against its −, over the tolerances of the parts; a dash stands on the return itself and on the screen. Polarity is that of a core against the return, and of the return against it: a probe works below its common, so there the common is the positive one. Where the sheets of the parts tell no voltage it is unknown: measure it and ask, never guess.',
  ),
  note(
    'Numbers of terminals are not stated in the plant file: they are written in by whoever builds the box. The Earth column tells what the plant file states or what the parts are known to do; the grounding drawing shows the whole of it.',
  ),
];
