import {
  cableRuns,
  type DesignedPoint,
  type EarthPlace,
  type EarthPlaces,
  feedCores,
  type RunOfCable,
  type Showing,
  showQuantity,
} from '@soundpost/core';
import { type ChainPart, chainParts, keyNumbers } from '../chain/chain-parts.ts';
import { type Drawing, label, line, type Mark, polyline, rectangle } from '../drawing/drawing.ts';
import { drawnAs } from '../drawing/symbols.ts';
import { boldness, fitted, wrapped } from '../drawing/text-extent.ts';
import { dot, plainEarth } from './earth-symbols.ts';

const width = 760;
const size = 11;
const step = 1.28 * size;
/** Between the cores, and from the last of them to the screen. */
const apart = 26;

interface Placed {
  readonly part: ChainPart;
  readonly left: number;
  readonly right: number;
  readonly middle: number;
  readonly last: boolean;
}

/**
 * One loop from the transducer to the input: every part with its terminals, every length of cable, the screen, and one
 * earth that everything earthed is drawn down to. Where a barrier limits a hazardous area its edge is drawn before it.
 */
export function loopDrawing(designed: DesignedPoint, places: EarthPlaces, showing: Showing): Drawing | undefined {
  const { point, appraisal, area } = designed;
  if (appraisal === undefined) return undefined;
  const { chain } = appraisal.prediction;
  const parts = chainParts(chain.parts).filter((each) => each.role !== 'cable' && each.role !== 'mount');
  const tags = [undefined, ...(chain.parts.tags ?? []), undefined];
  const runs = cableRuns(chain);
  const wires = feedCores[chain.transducer.feed];
  const spacing = (width - 128) / (parts.length - 1);
  const half = Math.min(54, spacing * 0.34);
  const room = Math.min(spacing - 10, 190);
  const texts = parts.map((part, index) =>
    textsOf(part, tags[index], index === 0 ? point.of : undefined, room, showing),
  );
  const tall = Math.max(...texts.map((each) => each.length)) * step + 8;
  const top = tall + 8;
  const wireAt = (core: number) => top + 18 + core * apart;
  const screenAt = wireAt(wires.length);
  const bottom = screenAt + 10;
  const rail = bottom + 2.6 * step + 8;
  const placed = parts.map((part, index): Placed => {
    const middle = 64 + index * spacing;
    return { part, middle, left: middle - half, right: middle + half, last: index === parts.length - 1 };
  });
  const joinedTo = (place: EarthPlace) => placed.find((each) => standsAt(each, place));
  const marks: Mark[] = [
    ...placed.flatMap(({ middle, left, part }, index) => [
      ...drawnAs('part', rectangle(left, top, 2 * half, bottom - top, 'paper')),
      ...part.symbol(middle, top + (bottom - top) / 2),
      ...texts[index]!.map(({ text, look }, row) =>
        label(anchored(middle, index, parts.length), (row + 1) * step, text, {
          size: look === 'strong' ? size : size - 1,
          look,
          anchor: index === 0 ? 'start' : index === parts.length - 1 ? 'end' : 'middle',
        }),
      ),
    ]),
    ...placed
      .slice(1)
      .flatMap((next, index) =>
        linkMarks(placed[index]!, next, runs, index, { wires, wireAt, screenAt, bottom, showing }),
      ),
    ...earthMarks(places, joinedTo, { returnAt: wireAt(wires.length - 1), screenAt, rail }),
    ...(area === undefined ? [] : edgeMarks(placed, top, rail)),
  ];
  return {
    width,
    height: rail + 22,
    title: `Loop of ${point.of}`,
    description: `${placed.map((each) => each.part.name).join(', ')}; ${earthWords(places, designed.stated.wiring !== undefined)}`,
    marks,
  };
}

/** The outermost texts stand flush with the paper. */
function anchored(middle: number, index: number, parts: number): number {
  if (index === 0) return 4;
  return index === parts - 1 ? width - 4 : middle;
}

function textsOf(part: ChainPart, tag: string | undefined, of: string | undefined, room: number, showing: Showing) {
  const name = tag === undefined ? part.name : `${tag}: ${part.name}`;
  return [
    ...wrapped(of ?? '', room / boldness, size).flatMap((text) =>
      text === '' ? [] : { text, look: 'strong' as const },
    ),
    ...wrapped(name, room / boldness, size).map((text) => ({ text, look: 'strong' as const })),
    ...wrapped(part.kind.name, room, size - 1).map((text) => ({ text, look: 'quiet' as const })),
    ...keyNumbers(part, showing)
      .slice(0, 3)
      .flatMap((each) => wrapped(each, room, size - 1).map((text) => ({ text, look: 'plain' as const }))),
  ];
}

interface Rows {
  readonly wires: readonly string[];
  wireAt(core: number): number;
  readonly screenAt: number;
  readonly bottom: number;
  readonly showing: Showing;
}

/** The cores and the screen from one part to the next, with their terminals; a cable says which, of what type, how long. */
function linkMarks(from: Placed, to: Placed, runs: readonly RunOfCable[], index: number, rows: Rows): readonly Mark[] {
  const { wires, wireAt, screenAt, bottom, showing } = rows;
  const run = runs.find((each) => startsAt(each, from, index));
  const middle = (from.right + to.left) / 2;
  const gap = to.middle - from.middle - 14;
  const words =
    run === undefined
      ? ['no cable', 'between']
      : [
          `C${run.number} ${run.cable.name}`,
          run.length.known ? showQuantity('length', run.length.value, showing) : 'unknown length',
        ];
  return [
    ...wires.flatMap((name, core): readonly Mark[] => [
      line(from.right, wireAt(core), to.left, wireAt(core), 'ink'),
      ...terminal(from.right, wireAt(core)),
      ...terminal(to.left, wireAt(core)),
      label(from.right + 5, wireAt(core) - 4, name, { size: size - 1 }),
    ]),
    line(from.right, screenAt, to.left, screenAt, 'curve-second'),
    ...words.map((text, row) =>
      label(middle, bottom + (row + 1) * step, fitted(text, gap, size - 1), { size: size - 1, anchor: 'middle' }),
    ),
  ];
}

function terminal(x: number, y: number): readonly Mark[] {
  return drawnAs('terminal', { is: 'circle', x, y, radius: 2.6, look: 'paper' });
}

/** Runs are told by the part they lead on from: the first from the transducer, others by the name or tag of the part. */
function startsAt({ number, from }: RunOfCable, part: Placed, index: number): boolean {
  return index === 0
    ? number === 1
    : number > 1 && from.endsWith(part.part.name)
      ? true
      : number === index + 1 && number > 1;
}

function standsAt({ part, last }: Placed, place: EarthPlace): boolean {
  const kind = part.kind.kind;
  if (place === 'transducer') return part.role === 'transducer';
  if (place === 'input') return last;
  if (place === 'barrier') return kind === 'shunt-diode-barrier';
  return kind === 'junction-box';
}

/** Everything that is earthed goes down to one rail; more than one way down is more than one earth. */
function earthMarks(
  { signal, screen }: EarthPlaces,
  joinedTo: (place: EarthPlace) => Placed | undefined,
  { returnAt, screenAt, rail }: { readonly returnAt: number; readonly screenAt: number; readonly rail: number },
): readonly Mark[] {
  const drop = (place: EarthPlace, from: number, inward: number): readonly Mark[] => {
    const found = joinedTo(place);
    if (found === undefined) return [];
    const edge = found.part.role === 'transducer' ? found.right : found.left;
    const x = found.part.role === 'transducer' ? edge - inward : edge + inward;
    return [
      polyline(
        [
          [edge, from],
          [x, from],
          [x, rail],
        ],
        'thin',
      ),
      dot(x, rail),
    ];
  };
  const drops = [
    ...signal.map((each) => drop(each, returnAt, 16)),
    ...screen.map((each) => drop(each, screenAt, 8)),
  ].flat();
  if (drops.length === 0)
    return [
      label(4, rail + 4, 'no place of this loop is joined to earth, as far as stated', {
        size: size - 1,
        look: 'italic',
      }),
    ];
  const end = width - 40;
  return [
    line(64, rail, end, rail, 'ink'),
    ...drops,
    ...plainEarth(end, rail),
    label(64, rail + 16, 'main earth', { size: size - 1 }),
  ];
}

/** The edge of the hazardous area stands before the part that limits what goes in. */
function edgeMarks(placed: readonly Placed[], top: number, rail: number): readonly Mark[] {
  const at = placed.findIndex(
    ({ part }) => part.kind.kind === 'shunt-diode-barrier' || part.kind.kind.startsWith('galvanic-isolator'),
  );
  if (at < 1) return [];
  const x = placed[at]!.left - 9;
  return [line(x, top - 4, x, rail - 8, 'centre-line')];
}

export function earthWords({ signal, screen, unknown }: EarthPlaces, screenStated = true): string {
  const told = (places: readonly EarthPlace[]) =>
    places.length === 0 ? 'nowhere' : `at the ${places.join(' and the ')}`;
  const doubt =
    unknown.length === 0 ? '' : `; not known: ${unknown.map((each) => `${each.what} of ${each.of}`).join(', ')}`;
  return `return earthed ${told(signal)}, ${screenStated ? `screen earthed ${told(screen)}` : 'of the screen nothing is stated'}${doubt}`;
}
