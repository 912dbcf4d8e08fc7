import {
  type DesignedMachine,
  type FrequencyTable,
  fixed,
  type MachineElement,
  type PointPlace,
  pointPlaces,
  type Showing,
  showQuantity,
} from '@soundpost/core';
import { type Drawing, type Label, label, line, type Mark, type Polyline, type Width } from '../drawing/drawing.ts';
import { boxesAlong, placing } from '../drawing/label-placing.ts';
import { fitted, textWidth, wrapped } from '../drawing/text-extent.ts';
import { elementSymbol } from './element-symbols.ts';
import { hungPoints, roomForPoints, viewLabels, viewWords } from './point-marks.ts';

/**
 * The train as a schematic: each shaft a centre line, the elements in the order of the file. What joins two shafts
 * stands on both; a coupling joins the ends of two shafts that lie in one line. Points hang under the element they sit
 * at, unless they are left out.
 */
export function trainDrawing(
  machine: DesignedMachine,
  showing: Showing,
  width: Width,
  { points = true }: { readonly points?: boolean } = {},
): Drawing {
  const { train } = machine.stated;
  const places = points ? pointPlaces(machine.stated) : [];
  const lanes = laneOfShaft(train.shafts, train.elements);
  const size = width === 'wide' ? 12 : 9.5;
  const whole = width === 'wide' ? 760 : 358;
  const perRow = width === 'wide' ? 8 : 5;
  const marks: Mark[] = [];
  let top = 0;
  for (let from = 0; from < Math.max(1, train.elements.length); from += perRow) {
    const elements = train.elements.slice(from, from + perRow);
    const drawn = row(machine, elements, places, perRow, lanes, top, whole, size, showing);
    marks.push(...drawn.marks);
    top = drawn.bottom;
  }
  const views = viewLabels(places, top, whole, size - 0.5);
  marks.push(...views);
  top += views.length * 1.3 * size + (views.length === 0 ? 0 : 6);
  return {
    width: whole,
    height: top,
    title: `Train of ${machine.stated.name}`,
    description: `In order: ${train.elements.map((each) => `${each.name} on ${shaftsOf(each).join(' and ')}`).join('; ')}.${spoken(places)}`,
    marks,
  };
}

const laneHeight = 78;

function row(
  { stated, frequencies }: DesignedMachine,
  elements: readonly MachineElement[],
  places: readonly PointPlace[],
  perRow: number,
  lanes: ReadonlyMap<string, number>,
  top: number,
  whole: number,
  size: number,
  showing: Showing,
) {
  const used = [...new Set(elements.flatMap((each) => shaftsOf(each).map((shaft) => lanes.get(shaft) ?? 0)))].sort(
    (a, b) => a - b,
  );
  const laneAt = (shaft: string) => top + 46 + used.indexOf(lanes.get(shaft) ?? 0) * laneHeight;
  const left = 8;
  const column = (whole - 2 * left) / Math.min(perRow, Math.max(3, elements.length));
  const at = (index: number) => left + column * (index + 0.5);
  const marks: Mark[] = [];
  const shafts = stated.train.shafts.filter((shaft) => elements.some((each) => shaftsOf(each).includes(shaft)));
  const names: NameOfShaft[] = [];
  for (const shaft of shafts) {
    const own = elements.flatMap((each, index) => (shaftsOf(each).includes(shaft) ? [at(index)] : []));
    const alone = elements.flatMap((each, index) => (shaftsOf(each).join() === shaft ? [at(index)] : []));
    const y = laneAt(shaft);
    const [from, to] = [Math.min(...own) - column * 0.36, Math.max(...own) + column * 0.36];
    marks.push(line(from, y, to, y, 'centre-line'));
    const x = alone.length === 0 ? from : Math.min(...alone) - column * 0.36;
    names.push({ shaft, text: `${shaft}, ${speedWords(frequencies, shaft, showing)}`, x, y: y - 31 });
  }
  const links = elements.flatMap((each, index) => {
    const heights = shaftsOf(each).map(laneAt);
    return new Set(heights).size > 1
      ? [line(at(index), Math.min(...heights), at(index), Math.max(...heights), 'thin')]
      : [];
  });
  const lowest = top + 46 + (Math.max(1, used.length) - 1) * laneHeight;
  const heightsOf = (element: MachineElement) =>
    shaftsOf(element).length === 0 ? [top + 46] : [...new Set(shaftsOf(element).map(laneAt))];
  const ofElements = elements.map((element) => places.filter(({ on }) => on?.element === element.name));
  const hung = elements.flatMap((element, index) => {
    const own = ofElements[index]!;
    return own.length === 0
      ? []
      : [hungPoints(own, at(index), Math.max(...heightsOf(element)) + 22, lowest + 28, column)];
  });
  const drops = hung.map((each) => each.drop);
  marks.push(...links, ...drops, ...shaftNames(names, [...links, ...drops], whole, size));
  marks.push(...hung.flatMap((each) => each.marks));
  const bottom = lowest + 34 + roomForPoints(Math.max(0, ...ofElements.map((each) => each.length)), column);
  let lines = 1;
  for (const [index, element] of elements.entries()) {
    for (const y of heightsOf(element)) marks.push(...elementSymbol(element.kind)(at(index), y));
    const words = wrapped(element.name.replaceAll('-', '- '), column - 6, size, 3);
    lines = Math.max(lines, words.length);
    for (const [order, text] of words.entries()) {
      const joinedAgain = text.replaceAll('- ', '-');
      marks.push(label(at(index), bottom + (order + 1) * 1.25 * size, joinedAgain, { size, anchor: 'middle' }));
    }
  }
  return { marks, bottom: bottom + (lines + 0.8) * 1.25 * size };
}

interface NameOfShaft {
  readonly shaft: string;
  /** With its speed. */
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

/** Each name above the beginning of its shaft, or right of a link that would run through it. */
function shaftNames(
  names: readonly NameOfShaft[],
  links: readonly Polyline[],
  whole: number,
  size: number,
): readonly Label[] {
  const free = placing({ x: 0, y: -size, width: whole, height: Number.MAX_SAFE_INTEGER }, 2);
  for (const link of links) for (const box of boxesAlong(link.points)) free.keepFree(box);
  return names.flatMap(({ shaft, text, x, y }) => {
    const starts = [x, ...links.map((link) => link.points[0]![0] + 6).filter((start) => start > x)];
    const put = (start: number, words: string) => label(start, y, words, { size, look: 'italic' });
    const shortened = [0.7, 0.5, 0.3].map((share) => fitted(text, textWidth(text, size) * share, size));
    // Speeds stand in the tables too; the name alone is better than a name that is cut.
    return free.place([text, shaft, ...shortened].flatMap((words) => starts.map((start) => put(start, words)))) ?? [];
  });
}

function spoken(places: readonly PointPlace[]): string {
  if (places.length === 0) return '';
  const at = places.map(({ number, name, on }) => `${number} ${name}${on === undefined ? '' : ` at ${on.element}`}`);
  return ` Points: ${at.join('; ')}. ${viewWords(places).join('; ')}.`;
}

function shaftsOf(element: MachineElement): readonly string[] {
  return [...new Set(Object.values<string>(element.shafts))].filter((shaft) => shaft !== fixed);
}

/** Two shafts share a line where a coupling joins them and everything on the one stands before everything on the other. */
function laneOfShaft(shafts: readonly string[], elements: readonly MachineElement[]): ReadonlyMap<string, number> {
  const lanes = new Map(shafts.map((shaft, index) => [shaft, index]));
  const reach = (lane: number) => {
    const places = elements.flatMap((each, index) =>
      each.kind !== 'coupling' && shaftsOf(each).some((shaft) => lanes.get(shaft) === lane) ? [index] : [],
    );
    return { first: Math.min(...places), last: Math.max(...places) };
  };
  for (const element of elements) {
    const [one, other] = shaftsOf(element).map((shaft) => lanes.get(shaft)!);
    if (element.kind !== 'coupling' || one === undefined || other === undefined || one === other) continue;
    const [a, b] = [reach(one), reach(other)];
    if (!(a.last < b.first || b.last < a.first)) continue;
    for (const [shaft, lane] of lanes) if (lane === other) lanes.set(shaft, one);
  }
  return lanes;
}

function speedWords({ shafts, states }: FrequencyTable, shaft: string, showing: Showing): string {
  const cells = shafts.find((row) => row.shaft === shaft)?.cells ?? [];
  const ends = ['lowest', 'highest'].map((name) => cells.find((cell) => cell.state === name)?.frequency);
  if (states.length === 0 || !ends.every((each) => each?.known === true)) return 'speed unknown';
  const [low, high] = ends.map((each) => showQuantity('shaft speed', each?.known === true ? each.value : 0, showing));
  return low === high ? low! : `${low!.replace(/ .*$/, '')} to ${high}`;
}
