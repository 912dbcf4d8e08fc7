import {
  cableRuns,
  type DesignedPoint,
  type EarthPlace,
  type EarthPlaces,
  earthPlaces,
  feedCores,
  feedPolarity,
  type LineElement,
  type MeasuringChain,
  type RunOfCable,
  supplyTerminals,
  type TerminalVoltage,
  valueIfStated,
  type WiredPoint,
  wiringGraph,
} from '@soundpost/core';
import { type Joint, jointBetween, jointsOf } from '../wiring/joints.ts';
import { none, unknown, words } from './cells.ts';
import type { Cell } from './record.ts';
import { terminalsOf } from './terminals.ts';

/** One terminal of one loop: where, which core, what comes in and goes on, whether it is earthed, what a meter shows. */
export interface TerminalRow {
  readonly point: string;
  /** Tag of the box or barrier it is in; absent where none is stated. */
  readonly tag: string | undefined;
  /** As every other document names it: `ZB-28, field side`. */
  readonly terminal: string;
  readonly core: string;
  /** Of its direct voltage against the other core of its pair, or the word screen. */
  readonly polarity: '+' | '\u2212' | 'screen';
  readonly comesIn: Cell;
  readonly goesOn: Cell;
  readonly earth: Cell;
  /** Absent where no voltage is told of this core: it is what the others are measured against, or the screen. */
  readonly expected: 'reference' | 'not known' | readonly ExpectedVoltage[];
}

export type ExpectedVoltage = Pick<TerminalVoltage, 'state' | 'voltage'>;

/** A place of a loop that has terminals. */
interface Place {
  readonly tag: string | undefined;
  readonly terminal: string;
  readonly role: EarthPlace | undefined;
  /** Places are counted as cables are: −1 is the transducer. */
  readonly number: number;
  readonly sides: readonly ('in' | 'on')[];
}

/** Every terminal of a loop from the transducer to the input, with the screen as one core more. */
export function terminalRows(designed: DesignedPoint, wired: WiredPoint): readonly TerminalRow[] {
  const { chain } = wired;
  const told = terminalsOf(designed);
  const earths: Earths = {
    wired,
    places: earthPlaces(wired),
    joints: jointsOf(wiringGraph([wired])).get(wired.point.of) ?? [],
  };
  const wires = [...feedCores[chain.transducer.feed], 'screen'];
  const supplies = supplyTerminals(chain);
  const polarities = feedPolarity[chain.transducer.feed];
  const places = placesOf(chain, told[0]?.name).flatMap((place) =>
    wires.map((core, index): TerminalRow => {
      const isReturn = index === wires.length - 2;
      const fed = supplies.filter((each) => each.is === 'supply core' && each.place === place.terminal);
      return {
        point: wired.point.of,
        tag: place.tag,
        terminal: place.terminal,
        core,
        polarity: polarities[index] ?? 'screen',
        comesIn: place.sides.includes('in') ? cableCell(chain, place.number - 1, 'in') : none,
        goesOn: place.sides.includes('on') ? cableCell(chain, place.number, 'on') : none,
        earth: core === 'screen' ? screenCell(earths, place.role) : isReturn ? returnCell(earths, place.role) : none,
        expected:
          isReturn || core === 'screen'
            ? 'reference'
            : core === 'supply'
              ? fed.length === 0
                ? 'not known'
                : fed
              : (told.find((each) => each.name === place.terminal || each.name === `${place.terminal}, across the card`)
                  ?.voltages ?? 'not known'),
      };
    }),
  );
  return [...places, ...ownTerminals(wired)];
}

/** The pair a supply in the line gives, and the pair an isolator takes: no core of a field cable is on them. */
function ownTerminals({ point, chain }: WiredPoint): readonly TerminalRow[] {
  const supplies = supplyTerminals(chain).filter((each) => each.is === 'supply');
  return chain.line.flatMap((element) => {
    if (element.is !== 'part') return [];
    const called = element.tag ?? element.name;
    const own = supplies.filter((each) => each.place === `${called}, supply` || each.place === `${called}, own supply`);
    if (own.length === 0) return [];
    return (['+', '\u2212'] as const).map(
      (polarity): TerminalRow => ({
        point: point.of,
        tag: element.tag,
        terminal: own[0]!.place,
        core: `supply ${polarity}`,
        polarity,
        comesIn: words('supply, no cable of this loop'),
        goesOn: none,
        earth: none,
        expected: polarity === '+' ? own : 'reference',
      }),
    );
  });
}

function placesOf(chain: MeasuringChain, first: string | undefined): readonly Place[] {
  const elements = chain.line.flatMap((each) => (each.is === 'part' ? [each] : []));
  const start: Place = {
    tag: undefined,
    terminal: first ?? 'transducer',
    role: 'transducer',
    number: -1,
    sides: ['on'],
  };
  const end: Place = {
    tag: undefined,
    terminal: chain.parts.input.name,
    role: 'input',
    number: elements.length,
    sides: ['in'],
  };
  return [start, ...elements.flatMap((each, number) => placesOfPart(each, number)), end];
}

/** What only joins has one row of terminals; everything else has a side to the field and one to the card. */
function placesOfPart({ part, tag, name }: Extract<LineElement, { is: 'part' }>, number: number): readonly Place[] {
  const called = tag ?? name;
  if (part.joins === true) return [{ tag, terminal: called, role: 'junction box', number, sides: ['in', 'on'] }];
  const role = part.earthed === undefined ? undefined : 'barrier';
  return [
    { tag, terminal: `${called}, field side`, role, number, sides: ['in'] },
    { tag, terminal: `${called}, card side`, role: undefined, number, sides: ['on'] },
  ];
}

/** The cable that leads on from a place; parts beside each other are linked without one. */
function cableCell(chain: MeasuringChain, behind: number, side: 'in' | 'on'): Cell {
  const starts = [-1, ...(chain.parts.onward ?? []).map((each) => each.behind).sort((a, b) => a - b)];
  const run: RunOfCable | undefined = cableRuns(chain)[starts.indexOf(behind)];
  if (run === undefined) return words('link, no cable stated');
  return words(`C${run.number} ${side === 'in' ? `from ${run.from}` : `to ${run.to ?? 'unknown end'}`}`);
}

interface Earths {
  readonly wired: WiredPoint;
  readonly places: EarthPlaces;
  readonly joints: readonly Joint[];
}

function returnCell({ places, joints }: Earths, role: EarthPlace | undefined): Cell {
  if (role !== undefined && places.signal.includes(role)) return words('return joined to earth here');
  const joint =
    role === 'transducer'
      ? jointBetween(joints, 'signal', 'case')
      : role === 'input'
        ? jointBetween(joints, 'common', 'cabinet earth bar')
        : undefined;
  return joint?.state === 'unknown' ? unknown(joint.missing) : words('not joined to earth');
}

function screenCell({ wired: { point, wiring }, places, joints }: Earths, role: EarthPlace | undefined): Cell {
  const screens = joints.filter((each) => each.from.is === 'screen');
  if (screens.length === 0) return unknown([{ of: point.of, what: 'place where the screen is earthed' }]);
  const cut = role === 'junction box' && valueIfStated(wiring?.values.screenCutAt) === 'junction box';
  const onward = cut ? '; interrupted here' : '';
  if (role !== undefined && places.screen.includes(role)) return words(`screen joined to earth here${onward}`);
  const doubtful = screens.find((each) => each.state === 'unknown');
  if (doubtful?.state === 'unknown') return unknown(doubtful.missing);
  return words(`not joined to earth${onward}`);
}
