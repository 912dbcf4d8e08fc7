import type { PlantMachine } from '@soundpost/core';
import type { Edit } from '@soundpost/server/protocol';
import type { PlantSession } from '../plant-session.ts';
import type { BuildingAsked, Built, Removable } from './building-views.ts';
import { mentions } from './mentions.ts';

interface Removal {
  readonly stated: PlantMachine;
  readonly name: string;
  /** The machine as its file writes it. */
  readonly written: unknown;
}

/** What taking something away takes along, and what then speaks of something that is not there. */
export function removed(
  { what, machine, name }: Extract<BuildingAsked, { readonly act: 'remove' }>,
  session: PlantSession,
): Built {
  const stated = session.machine(machine)?.stated;
  if (stated === undefined) return { refused: `The plant has no machine '${machine}'.` };
  return ways[what]({ stated, name, written: session.machineWritten(machine) });
}

const ways: Readonly<Record<Removable, (removal: Removal) => Built>> = {
  machine: ({ stated: { name, title, points, train } }) => ({
    label: `Machine ${name} taken away`,
    edits: [{ path: ['machines', name], yaml: undefined }],
    takesAlong: [
      `${name}, ${title}, with everything stated of it`,
      ...named('shaft', train.shafts),
      ...named(
        'element',
        train.elements.map((each) => each.name),
      ),
      ...named(
        'measuring point',
        points.map((each) => each.statement.name),
      ),
    ],
    unsettles: [],
  }),
  point: ({ stated, name }) => {
    const point = stated.points.find((each) => each.statement.name === name);
    if (point === undefined) return { refused: `${stated.name} has no measuring point '${name}'.` };
    const targets = point.statement.targets.map((each) => each.name);
    return {
      label: `Measuring point ${name} taken away`,
      edits: [{ path: ['machines', stated.name, 'points', name], yaml: undefined }],
      takesAlong: [
        `${name}, with everything stated of it`,
        ...named('target', targets),
        ...(point.way === undefined ? [] : ['its measuring chain']),
        ...(point.alarm === undefined ? [] : ['its alarm']),
        ...(point.wiring === undefined ? [] : ['its wiring']),
      ],
      unsettles: [],
    };
  },
  element: (removal) => {
    const { stated, name } = removal;
    if (!stated.train.elements.some((each) => each.name === name)) {
      return { refused: `${stated.name} has no element '${name}'.` };
    }
    return going(removal, { elements: [name], plates: [] });
  },
  shaft: (removal) => {
    const { stated, name } = removal;
    const { shafts, elements, operation, plates = [] } = stated.train;
    const index = shafts.indexOf(name);
    if (index < 0) return { refused: `${stated.name} has no shaft '${name}'.` };
    if (shafts.length === 1) {
      return { refused: `${name} is the only shaft, and a machine has one at least. Add another first.` };
    }
    if (operation.by === 'shaft' && operation.shaft === name) {
      return {
        refused: `How ${stated.name} is run is stated as the speed of ${name}. Say under ‘How it is run’ by what else.`,
      };
    }
    const standing = elements.filter((each) => Object.values<string>(each.shafts).includes(name));
    const path = ['machines', stated.name, 'plates', ...(plates.length > 1 ? [name] : [])];
    return going(removal, {
      shaft: name,
      elements: standing.map((each) => each.name),
      plates: plates.some((each) => each.shaft === name) ? [{ path, yaml: undefined }] : [],
    });
  },
  state: ({ stated, name, written }) => {
    const { states } = stated.train.operation;
    if (!states.some((each) => each.name === name)) return { refused: `${stated.name} has no state '${name}'.` };
    const path = ['machines', stated.name, 'operation', 'states', ...(states.length > 1 ? [name] : [])];
    return {
      label: `Operating state ${name} taken away`,
      edits: [{ path, yaml: undefined }],
      takesAlong: [`the state ${name}`],
      unsettles: mentions(written, { states: [name] }),
    };
  },
};

interface Going {
  /** Where a shaft goes, with the elements that stand on it. */
  readonly shaft?: string;
  readonly elements: readonly string[];
  readonly plates: readonly Edit[];
}

/** Elements go with what listens to them alone; what a target says of their lines stays, and is told. */
function going({ stated, written }: Removal, { shaft, elements, plates }: Going): Built {
  const { operation, shafts, elements: all } = stated.train;
  if (operation.by === 'line' && elements.includes(operation.motor)) {
    return {
      refused: `How ${stated.name} is run is stated as the line frequency of ${operation.motor}. Say under ‘How it is run’ by what else.`,
    };
  }
  // A shaft and an element may be called the same: what hears that name hears the one that stays.
  const staying = [...shafts.filter((each) => each !== shaft), ...all.map((each) => each.name)].filter(
    (each) => shafts.some((own) => own === each && own !== shaft) || !elements.includes(each),
  );
  const gone = [...(shaft === undefined ? [] : [shaft]), ...elements];
  const lost = gone.filter((each) => !staying.includes(each));
  const at = ['machines', stated.name];
  const heard = stated.points.map((point) => listening(point, [...at, 'points', point.statement.name], lost, shaft));
  const of = shaft === undefined ? `the element ${elements[0]}` : `the shaft ${shaft}`;
  return {
    label: `${shaft === undefined ? `Element ${elements[0]}` : `Shaft ${shaft}`} taken away`,
    edits: [
      ...(shaft === undefined ? [] : [{ path: [...at, 'shafts', shafts.indexOf(shaft)], yaml: undefined }]),
      ...plates,
      ...elements.map((each) => ({ path: [...at, 'elements', each], yaml: undefined })),
      ...heard.flatMap((each) => each.edits),
    ],
    takesAlong: [
      of,
      ...plates.map(() => `the speed on a plate of ${shaft}`),
      ...(shaft === undefined ? [] : elements.map((each) => `the element ${each}, which stands on it`)),
    ],
    unsettles: [...heard.flatMap((each) => each.words), ...mentions(written, { lines: lost })],
  };
}

/** What becomes of a point that listens to what goes, or whose probes look at it. */
function listening(
  { statement, shaft: lookedAt }: PlantMachine['points'][number],
  path: readonly string[],
  lost: readonly string[],
  shaft: string | undefined,
): { readonly edits: readonly Edit[]; readonly words: readonly string[] } {
  const { name, hears = [] } = statement;
  const left = hears.filter((each) => !lost.includes(each));
  const without = hears.flatMap((each, index) => (lost.includes(each) ? [index] : [])).reverse();
  const unheard = left.length === 0 ? [[...path, 'hears']] : without.map((index) => [...path, 'hears', index]);
  const looks = shaft !== undefined && lookedAt === shaft;
  return {
    edits: [...(without.length === 0 ? [] : unheard), ...(looks ? [[...path, 'shaft']] : [])].map((each) => ({
      path: each,
      yaml: undefined,
    })),
    words: [
      ...(without.length === 0
        ? []
        : left.length === 0
          ? [`${name} no longer says what it listens to, and then counts as listening to all`]
          : [`${name} then listens to ${left.join(', ')} alone`]),
      ...(looks
        ? [`${name} no longer says which shaft its probes look at: it is then the one speeds are counted in`]
        : []),
    ],
  };
}

function named(what: string, names: readonly string[]): readonly string[] {
  if (names.length === 0) return [];
  const some = names.length > 8 ? `${names.slice(0, 8).join(', ')} and ${names.length - 8} more` : names.join(', ');
  return [`${names.length} ${what}${names.length === 1 ? '' : 's'}: ${some}`];
}
