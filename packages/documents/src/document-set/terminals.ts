import {
  type DesignedPoint,
  type Showing,
  supplyTerminals,
  type TerminalVoltage,
  terminalVoltages,
} from '@soundpost/core';
import { answered, none, numberIn, words } from './cells.ts';
import type { SetTable } from './record.ts';
import { blankColumn, numberColumn, setTable, type TableColumn, textColumn } from './set-table.ts';

const states = ['at rest', 'at 4 mA', 'at 20 mA'] as const;

/** A terminal with what a hand meter should show there in each state. */
interface Terminal {
  readonly name: string;
  readonly voltages: readonly Pick<TerminalVoltage, 'terminal' | 'state' | 'voltage'>[];
}

/** The terminals of a point in the order of the line, each once: every document that names terminals takes them here. */
export function terminalsOf({ appraisal }: DesignedPoint): readonly Terminal[] {
  if (appraisal === undefined) return [];
  const { chain } = appraisal.prediction;
  const all = [
    ...terminalVoltages(chain),
    ...supplyTerminals(chain).map(({ place, is, state, voltage }) => ({
      terminal: is === 'supply core' ? `${place}, supply core` : place,
      state,
      voltage,
    })),
  ];
  return [...new Set(all.map((each) => each.terminal))].map((name) => ({
    name,
    voltages: all.filter((each) => each.terminal === name),
  }));
}

/** The direct voltage expected at each terminal; with room for what is found where a test is made of it. */
export function terminalTable(designed: DesignedPoint, showing: Showing, found = false): SetTable {
  const terminals = terminalsOf(designed);
  const present = states.filter((state) =>
    terminals.some((each) => each.voltages.some((voltage) => voltage.state === state)),
  );
  const columns = present.flatMap((state): readonly TableColumn<Terminal>[] => [
    voltageColumn(state, 'low', showing),
    voltageColumn(state, 'high', showing),
    ...(found ? [blankColumn<Terminal>(`Found ${state}, V`)] : []),
  ]);
  return setTable<Terminal>(
    `${designed.point.of} terminals`,
    'Direct voltage across the pair at each terminal, over the tolerances of the parts',
    [textColumn('Terminal', ({ name }) => words(name), 2.4), ...columns],
    terminals,
    'The sheets tell no direct voltage of this transducer.',
  );
}

function voltageColumn(state: (typeof states)[number], end: 'low' | 'high', showing: Showing): TableColumn<Terminal> {
  const head = `${end === 'low' ? 'Lowest' : 'Highest'} ${state}`;
  return numberColumn(head, 'V', ({ voltages }) => {
    const found = voltages.find((each) => each.state === state);
    return found === undefined ? none : answered(found.voltage, (span) => numberIn('V', 'voltage', span[end], showing));
  });
}
