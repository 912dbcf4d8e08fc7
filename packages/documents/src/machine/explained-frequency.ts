import {
  bearingRow,
  type DesignedMachine,
  type FrequencyLine,
  type FrequencyRow,
  type FrequencyTable,
  fixed,
  kindOf,
  lineKey,
  type MachineElement,
  type OperatingState,
  oneHertz,
  type Reduced,
  type RollingBearingSheet,
  referenceSpeed,
  type ShaftRow,
  type Sheet,
  type Showing,
  type Stated,
  showFraction,
  showNumber,
  showPercent,
  showQuantity,
  slipKey,
  valueOver,
} from '@soundpost/core';
import type { Derivation } from '../derivation/derivation.ts';
import { capital, type Explain, step, workedSteps } from '../derivation/explained.ts';

const fine = { digits: 6 } as const;

/** A line of the table of frequencies at one state: how often its sources count, and how fast they are there. */
export function explainedLine(
  machine: DesignedMachine,
  line: FrequencyLine,
  state: OperatingState,
  value: number,
  showing: Showing,
): Explain {
  return () => {
    const shown = showQuantity('frequency', value, { ...showing, digits: 5 });
    const { steps, numbers } = overSources(
      line.reduced.known ? line.reduced.value : [],
      machine,
      state,
      shown,
      'f',
      showing,
    );
    const own = ofElement(machine, line, state, value, showing);
    return {
      title: `${line.name} ${stateWords(state)}`,
      sentence: `${capital(line.meaning)}. ${capital(stateWords(state))} it lies at ${shown}${slipWords(line, showing)}${line.assumed.length === 0 ? '' : `; assumed: ${line.assumed.join(', ')}`}.`,
      numbers: [{ name: 'frequency', shown }, ...numbers],
      steps: [...own, ...steps],
      sources: line.sources,
    };
  };
}

/** Where a line may lie with what slips or is not known, at one state or over all of them. */
export function explainedRange(
  line: FrequencyLine,
  { low, high }: { readonly low: number; readonly high: number },
  where: string,
  showing: Showing,
): Explain {
  return () => {
    const hertz = (value: number) => showQuantity('frequency', value, { ...showing, ...fine });
    const end = (name: string, value: number, slip: number): Derivation => {
      const left = `f_${name}`;
      const without = slip === 0 ? value : value / (1 + slip);
      const percent = showPercent(slip, 6, showing.decimal).replace(/^[+\u2212]/, '');
      return step(
        `${left} = f_${name === 'low' ? 'least' : 'most'} · (1 ${slip < 0 ? '−' : '+'} s)`,
        `${hertz(without)} · (1 ${slip < 0 ? '−' : '+'} ${percent})`,
        hertz(value),
      );
    };
    return {
      title: `${line.name}, ${where}`,
      sentence: `${capital(line.meaning)}. ${capital(where)} it may lie from ${hertz(low)} to ${hertz(high)}${slipWords(line, showing)}.`,
      numbers: [
        { name: 'lowest', shown: hertz(low) },
        { name: 'highest', shown: hertz(high) },
        {
          name: 'slip',
          shown: `${showPercent(line.slip.low, 4, showing.decimal)} to ${showPercent(line.slip.high, 4, showing.decimal)}`,
        },
      ],
      steps: [end('low', low, line.slip.low), end('high', high, line.slip.high)],
      sources: line.sources,
    };
  };
}

/** How fast a shaft turns at one state. */
export function explainedSpeed(
  machine: DesignedMachine,
  row: ShaftRow,
  state: OperatingState,
  value: number,
  showing: Showing,
): Explain {
  return () => {
    const shown = showQuantity('shaft speed', value, { ...showing, digits: 5 });
    const { steps, numbers } = overSources(
      row.turn.reduced.known ? row.turn.reduced.value : [],
      machine,
      state,
      shown,
      'n',
      showing,
    );
    return {
      title: `Speed of shaft ${row.shaft} ${stateWords(state)}`,
      sentence: `Shaft ${row.shaft} turns at ${shown} ${stateWords(state)}, by the ratio of the elements between it and what the machine is run by.`,
      numbers: [{ name: 'speed', shown }, ...numbers],
      steps,
      sources: row.turn.sources,
    };
  };
}

/** The exact ratio of a shaft to the one all speeds are counted in. */
export function explainedRatio(
  { shaft, ratio, turn }: ShaftRow,
  reference: string,
  showing: Showing,
): Explain | undefined {
  if (!ratio.known) return undefined;
  const [over, under = '1'] = ratio.value.split('/');
  const value = Number(over) / Number(under);
  const shown = ratio.value.replace('-', '\u2212');
  return () => ({
    title: `Ratio of shaft ${shaft}`,
    sentence:
      shaft === reference
        ? `All speeds are counted in turns of ${reference}, so its own ratio is 1.`
        : `Shaft ${shaft} makes ${shown} turns while ${reference} makes one${value < 0 ? ', the other way round' : ''}: the equations of all couplings, gears and belts between them, solved without rounding.`,
    numbers: [
      { name: 'exact', shown },
      { name: 'as a decimal', shown: showNumber(value, 6, showing.decimal) },
    ],
    steps: [step('i = n_shaft / n_reference', shown, showNumber(value, 6, showing.decimal))],
    sources: turn.sources,
  });
}

/** The form of a line: how often it counts what turns. */
export function explainedForm(machine: DesignedMachine, row: FrequencyRow, showing: Showing): Explain | undefined {
  const { line, form, cells } = row;
  if (form === undefined) return undefined;
  const { states } = machine.frequencies;
  const known = states.flatMap((state) => {
    const cell = cells.find((each) => each.state === state.name)?.frequency;
    return cell?.known === true && cell.value > 0 ? [{ state, value: cell.value }] : [];
  })[0];
  return () => ({
    title: `${line.name}: its form`,
    sentence: `${capital(line.meaning)}: ${form}${line.assumed.length === 0 ? '' : `; assumed: ${line.assumed.join(', ')}`}.`,
    numbers: [{ name: 'form', shown: form }],
    steps: [
      ...(known === undefined ? [] : ofElement(machine, line, known.state, known.value, showing)),
      { formula: `f = ${form}` },
    ],
    sources: line.sources,
  });
}

/** |Σ factor · source|, with what each source is and how fast it is at the state. */
function overSources(
  reduced: Reduced,
  { frequencies, stated }: DesignedMachine,
  state: OperatingState,
  shown: string,
  left: string,
  showing: Showing,
): {
  readonly steps: readonly Derivation[];
  readonly numbers: readonly { readonly name: string; readonly shown: string }[];
} {
  const motors = stated.train.elements.filter((each) => kindOf(each).drive !== undefined).map((each) => each.name);
  const suffix = (motor: string) => (motors.length > 1 ? String(motors.indexOf(motor) + 1) : '');
  const letterOf = (of: string): { readonly letter: string; readonly name: string } => {
    if (of === referenceSpeed) return { letter: 'n_0', name: `speed of shaft ${frequencies.reference}` };
    for (const motor of motors) {
      if (of === lineKey(motor)) return { letter: `f_L${suffix(motor)}`, name: `line frequency of ${motor}` };
      if (of === slipKey(motor)) return { letter: `f_s${suffix(motor)}`, name: `slip frequency of ${motor}` };
    }
    return { letter: '1 Hz', name: '1 Hz' };
  };
  const terms = reduced.map(({ of, times, exact }) => {
    const source = state.sources[of]?.value;
    const size = Math.abs(times);
    const factor =
      exact === undefined
        ? showNumber(size, 6, showing.decimal)
        : showFraction({ ...exact, numerator: exact.numerator < 0n ? -exact.numerator : exact.numerator });
    const { letter, name } = letterOf(of);
    const at = source?.known === true ? showQuantity('frequency', source.value, { ...showing, ...fine }) : '…';
    return { negative: times < 0, factor, letter, name, at, constant: of === oneHertz, size };
  });
  if (terms.length === 0 || terms.some((each) => each.at === '…')) return { steps: [], numbers: [] };
  const sum = (text: (each: (typeof terms)[number]) => string) =>
    terms
      .map((each, index) => `${index === 0 ? (each.negative ? '−' : '') : each.negative ? ' − ' : ' + '}${text(each)}`)
      .join('');
  const whole = (text: string) => (terms.length > 1 || terms[0]!.negative ? `|${text}|` : text);
  const hertz = (value: number) => showQuantity('frequency', value, { ...showing, ...fine });
  const formula = whole(
    sum((each) =>
      each.constant ? hertz(each.size) : each.factor === '1' ? each.letter : `${each.factor} · ${each.letter}`,
    ),
  );
  const right = whole(
    sum((each) => (each.constant ? hertz(each.size) : each.factor === '1' ? each.at : `${each.factor} · ${each.at}`)),
  );
  const named = terms.filter((each) => !each.constant);
  return {
    steps: [step(`${left} = ${formula}`, right, shown, ...named.map((each) => `${each.letter}: ${each.name}`))],
    numbers: named.map((each) => ({ name: each.name, shown: each.at })),
  };
}

const bearingOutputs: Readonly<Record<string, string>> = {
  cage: 'cage',
  'outer-ring': 'outer-ring',
  'inner-ring': 'inner-ring',
  'element-spin': 'element-spin',
  'element-spin-twice': 'element-spin-twice',
};
const gearOutputs: Readonly<Record<string, string>> = {
  mesh: 'mesh',
  'hunting-tooth': 'hunting-tooth',
  'assembly-phase': 'assembly-phase',
};

/** The formula of the element itself, where a working has it: it tells where the factor comes from. */
function ofElement(
  { stated, frequencies }: DesignedMachine,
  line: FrequencyLine,
  state: OperatingState,
  value: number,
  showing: Showing,
): readonly Derivation[] {
  const element = stated.train.elements.find((each) => each.name === line.element);
  if (line.madeBy !== 'element' || element === undefined) return [];
  const name = line.name.slice(line.element.length + 1);
  const shown = showQuantity('frequency', value, { ...showing, ...fine });
  const wide = { ...showing, ...fine };
  const shafts = element.shafts as Readonly<Record<string, string>>;
  if (element.kind === 'rolling-bearing' && bearingOutputs[name] !== undefined) {
    const row = bearingRow(element.sheet as RollingBearingSheet);
    const [inner, outer] = [speedIn(frequencies, shafts.inner!, state), speedIn(frequencies, shafts.outer!, state)];
    if (!row.known || inner === undefined || outer === undefined) return [];
    const values = { ...row.value.row, shaftSpeed: inner, outerSpeed: outer };
    return workedSteps('rolling-bearing-frequencies', values, bearingOutputs[name], wide, shown);
  }
  if (element.kind === 'gear-pair' && gearOutputs[name] !== undefined) {
    const [z1, z2] = [countOf(element, 'drivingTeeth'), countOf(element, 'drivenTeeth')];
    const speed = speedIn(frequencies, shafts.from!, state);
    if (z1 === undefined || z2 === undefined || speed === undefined) return [];
    return workedSteps(
      'gear-mesh',
      { pinionTeeth: z1, wheelTeeth: z2, pinionSpeed: Math.abs(speed) },
      gearOutputs[name],
      wide,
      shown,
    );
  }
  return [];
}

function countOf(element: MachineElement, key: string): number | undefined {
  const entry = (element.sheet as Sheet).values[key] as Stated<number> | undefined;
  return entry?.known === true ? entry.value : undefined;
}

/** Speed of a shaft with its sense, in hertz; what is held fast does not turn. */
function speedIn({ shafts }: FrequencyTable, shaft: string, state: OperatingState): number | undefined {
  if (shaft === fixed) return 0;
  const row = shafts.find((each) => each.shaft === shaft);
  if (row === undefined || !row.turn.reduced.known || !row.ratio.known) return undefined;
  const speed = valueOver(row.turn.reduced.value, state.sources);
  if (!speed.known) return undefined;
  return row.ratio.value.startsWith('-') ? -speed.value : speed.value;
}

function slipWords({ slip }: FrequencyLine, showing: Showing): string {
  if (slip.low === 0 && slip.high === 0) return '';
  return ` by pure kinematics, and from ${showPercent(slip.low, 3, showing.decimal)} to ${showPercent(slip.high, 3, showing.decimal)} off it in truth`;
}

function stateWords({ name }: OperatingState): string {
  return name === 'between' ? 'at the speed held' : `at ${name}`;
}
