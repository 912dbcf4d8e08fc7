import { type Answer, answer, fromAll, type Span, si, unanswered } from '../quantity/index.ts';
import type { MeasuringChain } from './chain.ts';
import { fieldSide, type LineElement } from './line.ts';
import { loopVoltage } from './loop-load.ts';
import type { SupplyModel } from './supply/supply-kind.ts';
import type { LinearTravel } from './transducer/needs.ts';

/** The direct voltage a hand meter should show across the pair at one place, over the tolerances of the parts. */
export interface TerminalVoltage {
  /** `transducer`, `ZB-28, field side`, `ONL-24`. */
  readonly terminal: string;
  readonly state: 'at rest' | 'at 4 mA' | 'at 20 mA';
  readonly voltage: Answer<Span<'voltage'>>;
  /** What it comes of: start + I·R at both ends, the current below zero where the voltage falls along the line. */
  readonly of: Answer<VoltageRise>;
}

/** Voltage at the start of a row of terminals, and the resistance at each end of its tolerance up to the terminal. */
export interface VoltageRise {
  readonly start: { readonly low: number; readonly high: number };
  readonly current: number;
  readonly resistance: { readonly low: number; readonly high: number };
}

function told(terminal: string, state: TerminalVoltage['state'], of: Answer<VoltageRise>): TerminalVoltage {
  return {
    terminal,
    state,
    of,
    voltage: fromAll({ of }, ({ of: { start, current, resistance } }) =>
      spanOf(start.low + current * resistance.low, start.high + current * resistance.high),
    ),
  };
}

interface Ohms {
  readonly low: number;
  readonly high: number;
}

/** A terminal, and the resistance between the start of its row and it. */
interface Terminal {
  readonly name: string;
  readonly behind: Answer<Ohms>;
}

/** A row of terminals, and the resistance along all of it. */
interface Row {
  readonly terminals: readonly Terminal[];
  readonly whole: Answer<Ohms>;
}

const none: Answer<Ohms> = answer({ low: 0, high: 0 });

/**
 * Of a constant-current transducer V = bias + I·R, with R from it to the terminal; of a loop V = V_supply − I·R, with R
 * from the terminal back to the supply, at both ends of the scale. Over the tolerance of bias or supply, and with the
 * usual and the highest resistance of each part. Of a probe the voltage of the gap it is set to, the same along its line.
 * Nothing where the sheet of a transducer tells no direct voltage.
 */
export function terminalVoltages(chain: MeasuringChain): readonly TerminalVoltage[] {
  if (chain.transducer.biased !== undefined) return biasAlong(chain, chain.transducer.biased.bias);
  if (chain.transducer.linearTravel !== undefined) return gapAlong(chain, chain.transducer.linearTravel);
  if (chain.transducer.oneNumber === undefined) return [];
  return [...loopAt(chain, 'at 4 mA', 0.004), ...loopAt(chain, 'at 20 mA', 0.02)];
}

/** No direct current flows to an input that only looks, so the voltage of the gap is found at every terminal. */
function gapAlong(chain: MeasuringChain, travel: Answer<LinearTravel>): readonly TerminalVoltage[] {
  const set = fromAll({ travel }, (known) => known.travel.set?.voltage);
  if (set.known && set.value === undefined) return [];
  const { terminals } = row('oscillator-demodulator', fieldSide(chain.line).elements);
  const still = fromAll({ set }, ({ set: volts = 0 }) => ({
    start: { low: volts, high: volts },
    current: 0,
    resistance: { low: 0, high: 0 },
  }));
  return [...terminals.map((each) => each.name), chain.parts.input.name].map((terminal) =>
    told(terminal, 'at rest', still),
  );
}

function biasAlong(chain: MeasuringChain, bias: Answer<Span<'voltage'>>): readonly TerminalVoltage[] {
  const { elements, isolator } = fieldSide(chain.line);
  const input = chain.parts.input.name;
  const current = chain.fedBy?.current ?? unanswered([{ of: chain.of, what: 'feeding current' }]);
  const field = row('transducer', elements);
  if (isolator === undefined) return risen(bias, current, ended(field, input));
  const name = isolatorName(chain, elements.length);
  const rest = isolator.isolation?.restVoltage ?? unanswered([{ of: isolator.of, what: 'rest voltage' }]);
  const behind = row(`${name}, card side`, chain.line.slice(elements.length + 1));
  return [
    ...risen(bias, current, ended(field, `${name}, field side`)),
    ...risen(rest, chain.input.constantCurrent?.current ?? answer(0), ended(behind, input)),
  ];
}

function risen(
  from: Answer<Span<'voltage'>>,
  current: Answer<number>,
  terminals: readonly Terminal[],
): readonly TerminalVoltage[] {
  return terminals.map(({ name, behind }) =>
    told(
      name,
      'at rest',
      fromAll({ from, current, behind }, (v) => ({ start: v.from, current: v.current, resistance: v.behind })),
    ),
  );
}

function loopAt(chain: MeasuringChain, state: TerminalVoltage['state'], current: number): readonly TerminalVoltage[] {
  const { elements, isolator } = fieldSide(chain.line);
  const field = row('transducer', elements);
  const supply = loopVoltage(chain) ?? unanswered([{ of: chain.of, what: 'loop supply' }]);
  const card = chain.input.loopCard?.resistance ?? unanswered([{ of: chain.input.of, what: 'resistance' }]);
  const end = isolator === undefined ? exact(card) : resistanceOf(isolator);
  const terminals =
    isolator === undefined ? field.terminals : ended(field, `${isolatorName(chain, elements.length)}, field side`);
  const across = fromAll({ card }, (v) => ({
    start: { low: 0, high: 0 },
    current,
    resistance: { low: v.card, high: v.card },
  }));
  return [
    ...terminals.map(({ name, behind }) =>
      told(
        name,
        state,
        fromAll({ supply, whole: field.whole, end, behind }, (v) => ({
          start: v.supply,
          current: -current,
          resistance: {
            low: v.whole.high + v.end.high - v.behind.high,
            high: v.whole.low + v.end.low - v.behind.low,
          },
        })),
      ),
    ),
    told(`${chain.parts.input.name}, across the card`, state, across),
  ];
}

/** The terminals along a row: its first, and both sides of every part in it; a part that only joins has one. */
function row(first: string, elements: readonly LineElement[]): Row {
  const terminals: Terminal[] = [{ name: first, behind: none }];
  let behind = none;
  for (const each of elements) {
    if (each.is === 'cable') {
      behind = added(behind, exact(each.cable.loopResistance));
    } else if (each.part.voltage !== undefined) {
      // Where the supply sits in the ring of the loop is not said: it has no place of its own between the two wires.
      behind = added(behind, resistanceOf(each.part));
    } else if (each.part.joins) {
      terminals.push({ name: nameOf(each), behind });
    } else {
      terminals.push({ name: `${nameOf(each)}, field side`, behind });
      behind = added(behind, resistanceOf(each.part));
      terminals.push({ name: `${nameOf(each)}, card side`, behind });
    }
  }
  return { terminals, whole: behind };
}

function ended({ terminals, whole }: Row, name: string): readonly Terminal[] {
  return [...terminals, { name, behind: whole }];
}

type PartElement = Extract<LineElement, { is: 'part' }>;

function isolatorName(chain: MeasuringChain, place: number): string {
  return nameOf(chain.line[place] as PartElement);
}

function nameOf(element: PartElement): string {
  return element.tag ?? element.name;
}

function resistanceOf(part: SupplyModel): Answer<Ohms> {
  if (part.resistance === undefined) return none;
  return fromAll({ high: part.resistance, low: part.usualResistance ?? part.resistance }, (known) => known);
}

function exact(resistance: Answer<number>): Answer<Ohms> {
  return fromAll({ resistance }, ({ resistance: ohms }) => ({ low: ohms, high: ohms }));
}

function added(one: Answer<Ohms>, other: Answer<Ohms>): Answer<Ohms> {
  return fromAll({ one, other }, (v) => ({ low: v.one.low + v.other.low, high: v.one.high + v.other.high }));
}

function spanOf(low: number, high: number): Span<'voltage'> {
  return { low: si('voltage', low), high: si('voltage', high) };
}
