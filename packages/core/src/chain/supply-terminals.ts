import { type Answer, answer, fromAll, type Missing, type Span, si, unanswered } from '../quantity/index.ts';
import type { MeasuringChain } from './chain.ts';
import { feedCores, feedPolarity } from './feed-cores.ts';
import { fieldSide, type LineElement, total } from './line.ts';
import { loopVoltage } from './loop-load.ts';
import { type TerminalVoltage, terminalVoltages } from './terminal-voltages.ts';

type PartElement = Extract<LineElement, { is: 'part' }>;
type Volts = Answer<Span<'voltage'>>;

/** What stands at a terminal beside the pair of the signal: a supply, or the pair on the other side of a part. */
export interface SupplyTerminal {
  /** `RACK-DC`, `LOOP-24, supply`, `GI-410/2, own supply`. */
  readonly place: string;
  /** Told of a supply core or a supply of its own, or of the pair that carries the signal here. */
  readonly is: 'supply core' | 'supply' | 'pair';
  readonly state: TerminalVoltage['state'];
  readonly voltage: Volts;
}

/**
 * The direct voltage of what feeds a loop, where a core or terminals of its own carry it. Of a supply core
 * V = ±(V_s − I·R), with R of the cables there and back and of the barrier channel it passes, from the input to the place.
 * Of a loop supply and an isolator V_s at its own terminals; behind them V = I·R of what follows, and before a loop supply
 * V = V_s − I·R, wherever in the ring it sits. Valid at rest, once what it feeds has started. Common practice, no source.
 */
export function supplyTerminals(chain: MeasuringChain): readonly SupplyTerminal[] {
  return [
    ...ofSupplyCore(chain),
    ...chain.line.flatMap((each, at) => (each.is === 'part' ? ofPart(chain, each, at) : [])),
  ];
}

function ofSupplyCore(chain: MeasuringChain): readonly SupplyTerminal[] {
  const { transducer, input, line, parts } = chain;
  const core = feedCores[transducer.feed].indexOf('supply');
  if (core < 0) return [];
  const negative = feedPolarity[transducer.feed][core] !== '+';
  const supply: Volts = input.supplyVoltage ?? unanswered([{ of: input.of, what: 'supply voltage' }]);
  const draw = transducer.supplyDraw ?? unanswered([{ of: parts.transducer.name, what: 'supply draw' }]);
  const told = (place: string, voltage: Volts): SupplyTerminal => ({
    place,
    is: 'supply core',
    state: 'at rest',
    voltage: negative ? fromAll({ voltage }, ({ voltage: v }) => span(-v.high, -v.low)) : voltage,
  });
  const dropped = (ohms: readonly Answer<number>[]): Volts =>
    ohms.length === 0
      ? supply
      : fromAll({ supply, draw, ohms: total(ohms) }, (v) =>
          span(v.supply.low - v.draw * v.ohms, v.supply.high - v.draw * v.ohms),
        );
  const found: SupplyTerminal[] = [told(parts.input.name, supply)];
  const behind: Answer<number>[] = [];
  for (const each of line.toReversed()) {
    if (each.is === 'cable') {
      behind.push(each.cable.loopResistance);
    } else if (each.part.joins) {
      found.push(told(nameOf(each), dropped(behind)));
    } else {
      found.push(told(`${nameOf(each)}, card side`, dropped(behind)));
      if (each.part.resistance !== undefined || each.part.isolation !== undefined) {
        behind.push(each.part.supplyResistance ?? unanswered([notTold(each, 'supply resistance')]));
      }
      found.push(told(`${nameOf(each)}, field side`, dropped(behind)));
    }
  }
  return [...found, told(terminalVoltages(chain)[0]?.terminal ?? 'transducer', dropped(behind))].reverse();
}

function ofPart(chain: MeasuringChain, element: PartElement, at: number): readonly SupplyTerminal[] {
  const { part } = element;
  const states = chain.transducer.oneNumber === undefined ? (['at rest'] as const) : (['at 4 mA', 'at 20 mA'] as const);
  const each = (place: string, is: SupplyTerminal['is'], voltage: (state: TerminalVoltage['state']) => Volts) =>
    states.map((state): SupplyTerminal => ({ place, is, state, voltage: voltage(state) }));
  const name = nameOf(element);
  const own =
    part.isolation === undefined
      ? []
      : each(`${name}, own supply`, 'supply', () => part.ownSupply ?? unanswered([notTold(element, 'own supply')]));
  if (chain.transducer.oneNumber === undefined || (part.voltage === undefined && part.isolation === undefined))
    return own;
  const card = chain.input.loopCard?.resistance ?? unanswered([{ of: chain.input.of, what: 'resistance' }]);
  const rest = chain.line.slice(at + 1);
  const behind = total([card, ...rest.flatMap(resistanceOf)]);
  const alone = rest.every((next) => next.is === 'cable');
  const pair = each(`${name}, card side`, 'pair', (state) =>
    alone
      ? fromAll({ behind }, (v) => span(current(state) * v.behind, current(state) * v.behind))
      : unanswered([notTold(element, 'place in the ring of the loop')]),
  );
  if (part.isolation !== undefined) return [...pair, ...own];
  const supply: Volts = loopVoltage(chain) ?? unanswered([notTold(element, 'voltage')]);
  const before = each(`${name}, field side`, 'pair', (state) =>
    fromAll({ supply, behind }, (v) =>
      span(v.supply.low - current(state) * v.behind, v.supply.high - current(state) * v.behind),
    ),
  );
  return fieldSide(chain.line).isolator === undefined
    ? [...before, ...pair, ...each(`${name}, supply`, 'supply', () => part.voltage ?? supply)]
    : own;
}

function current(state: TerminalVoltage['state']): number {
  return state === 'at 4 mA' ? 0.004 : 0.02;
}

function resistanceOf(element: LineElement): readonly Answer<number>[] {
  if (element.is === 'cable') return [element.cable.loopResistance];
  return element.part.resistance === undefined ? [answer(0)] : [element.part.resistance];
}

function notTold(element: PartElement, what: string): Missing {
  return { of: element.part.of, what };
}

function nameOf(element: PartElement): string {
  return element.tag ?? element.name;
}

function span(low: number, high: number): Span<'voltage'> {
  return { low: si('voltage', low), high: si('voltage', high) };
}
