import { elementKindCalled, type PlantMachine, pointPlaces, shaftLines } from '@soundpost/core';
import { renamingEdits, rewordingEdits } from '@soundpost/files';
import type { Edit } from '@soundpost/server/protocol';
import type { PlantSession } from '../plant-session.ts';
import type { BuildingAsked, Built, Removable } from './building-views.ts';
import { rolesOf } from './kind-forms.ts';
import { entryNameDoubt, lineNameDoubt } from './name-doubts.ts';
import { type Mention, wordsAt } from './words-at.ts';

type Path = Edit['path'];

interface Renaming {
  readonly stated: PlantMachine;
  readonly name: string;
  readonly to: string;
  readonly machines: readonly PlantMachine[];
  /** The text the machine stands in, and every text of the machine by its place. */
  readonly text: string;
  readonly words: readonly Mention[];
}

/** What a new name changes: the place it is given, everything that refers to it, and what only speaks of it in words. */
interface Followed {
  readonly doubt: string | undefined;
  /** The key that is written otherwise; a shaft is listed, and has none. */
  readonly key: Path | undefined;
  readonly follows: readonly (Edit & { readonly words: string })[];
}

/** Gives something another name, and everything that refers to it with it; refused where the name is taken. */
export function renamed(
  { what, machine, name, to }: Extract<BuildingAsked, { readonly act: 'rename' }>,
  session: PlantSession,
): Built {
  const stated = session.machine(machine)?.stated;
  if (stated === undefined) return { refused: `The plant has no machine '${machine}'.` };
  const own = what === 'machine' ? machine : name;
  const next = to.trim();
  if (next === own) return { refused: 'It is called that already.' };
  const text = session.machineText(machine);
  const words = wordsAt(session.machineWritten(machine), ['machines', machine]);
  const renaming = { stated, name: own, to: next, machines: session.plant!.machines, text, words };
  const { doubt, key, follows } = ways[what](renaming);
  if (doubt !== undefined) return { refused: doubt };
  const keys = key === undefined ? [] : renamingEdits(text, key, next);
  if (key !== undefined && keys.length === 0) return { refused: `${machine} has no ${what} '${own}'.` };
  return {
    label: `${what.replace(/^./, (first) => first.toUpperCase())} ${own} renamed ${next}`,
    edits: [...follows.map(({ words: _, ...edit }) => edit), ...keys],
    takesAlong: follows.map((each) => each.words),
    unsettles: [...displaced(renaming, what), ...spoken(renaming, follows)],
  };
}

const ways: Readonly<Record<Removable, (renaming: Renaming) => Followed>> = {
  machine: ({ stated, name, to, machines, text, words }) => ({
    doubt: entryNameDoubt(
      to,
      machines.map((each) => each.name),
      'machine',
    ),
    key: ['machines', name],
    follows: besides(words, text, (value) =>
      value.startsWith(`${stated.name}/`) ? `${to}${value.slice(stated.name.length)}` : undefined,
    ),
  }),
  point: ({ stated, name, to, text, words }) => ({
    doubt: entryNameDoubt(
      to,
      stated.points.map((each) => each.statement.name),
      'measuring point',
    ),
    key: ['machines', stated.name, 'points', name],
    follows: besides(words, text, (value) =>
      value === name ? to : value === `${stated.name}/${name}` ? `${stated.name}/${to}` : undefined,
    ),
  }),
  element: (renaming) => {
    const { stated, name, to, text, words } = renaming;
    const { shafts, elements } = stated.train;
    const lines = shaftLines('').map((each) => each.name);
    const alsoShaft = shafts.includes(name);
    return {
      doubt: lineNameDoubt(
        to,
        elements.map((each) => each.name),
        'element',
      ),
      key: ['machines', stated.name, 'elements', name],
      follows: [
        ...valued(words, text, name, to, ([, , part, key]) => part === 'operation' && key === 'motor'),
        ...listening(renaming, alsoShaft),
        ...lineReferences(words, text, (of, line) => (of === name && !(alsoShaft && lines.includes(line)) ? to : of)),
      ],
    };
  },
  shaft: (renaming) => {
    const { stated, name, to, text, words } = renaming;
    const { shafts, elements, plates = [] } = stated.train;
    const lines = shaftLines('').map((each) => each.name);
    const alsoElement = elements.some((each) => each.name === name);
    const roles = (element: string) => {
      const kind = elementKindCalled(elements.find((each) => each.name === element)?.kind ?? '');
      return kind === undefined ? [] : ['on', ...rolesOf(kind).map((each) => each.role)];
    };
    const onPlate = plates.some((each) => each.shaft === name)
      ? renamingEdits(text, ['machines', stated.name, 'plates', name], to).map((edit) => ({
          ...edit,
          words: 'its speed on a plate',
        }))
      : [];
    return {
      doubt: shafts.includes(name) ? lineNameDoubt(to, shafts, 'shaft') : `${stated.name} has no shaft '${name}'.`,
      key: undefined,
      follows: [
        ...valued(words, text, name, to, ([, , part, key, role]) =>
          part === 'elements'
            ? typeof key === 'string' && typeof role === 'string' && roles(key).includes(role)
            : part === 'shafts' || (part === 'operation' && key === 'shaft') || (part === 'points' && role === 'shaft'),
        ),
        ...onPlate,
        ...listening(renaming, alsoElement),
        ...lineReferences(words, text, (of, line) => (of === name && (!alsoElement || lines.includes(line)) ? to : of)),
      ],
    };
  },
  state: ({ stated, name, to, text, words }) => ({
    doubt: lineNameDoubt(
      to,
      ['lowest', 'highest', ...stated.train.operation.states.map((each) => each.name)],
      'operating state',
    ),
    key: ['machines', stated.name, 'operation', 'states', name],
    follows: lineReferences(
      words,
      text,
      (of) => of,
      (state) => (state === name ? to : state),
    ),
  }),
};

type Followers = Followed['follows'];

/** The places that hold the name alone and mean what is renamed. */
function valued(
  words: readonly Mention[],
  text: string,
  name: string,
  to: string,
  means: (path: Path) => boolean,
): Followers {
  return words
    .filter(({ path, said }) => said === name && path.length > 3 && means(path))
    .flatMap(({ path }) => followed(text, path, to));
}

/** The point that stands beside the probes of another. */
function besides(words: readonly Mention[], text: string, renamedTo: (said: string) => string | undefined): Followers {
  return words
    .filter(({ path }) => path[2] === 'points' && path[4] === 'probes' && path[6] === 'casing-point')
    .flatMap(({ path, said }) => {
      const next = renamedTo(said);
      return next === undefined ? [] : followed(text, path, next);
    });
}

/** What a point listens to. A name that a shaft and an element have in common stays beside the new one: both are heard. */
function listening({ words, text, name, to }: Renaming, shared: boolean): Followers {
  return words
    .filter(({ path, said }) => path[2] === 'points' && path[4] === 'hears' && said === name)
    .flatMap(({ path }) =>
      shared
        ? [{ path, yaml: to, before: path.at(-1)!, words: `${placeWords(path)}, which names both` }]
        : followed(text, path, to),
    );
}

const reference = /^(\s*(?:\d+(?:\.\d+)?\s*[x×*]\s*)?)([a-z][\w.-]*)\/([\w./-]+)(\s+at\s+)([a-z][\w-]*)(\s*)$/i;

/** Where a point speaks of a line of the train at a state: in its targets and in the window of a wanted motion. */
function lineReferences(
  words: readonly Mention[],
  text: string,
  ofNow: (of: string, line: string) => string,
  stateNow: (state: string) => string = (state) => state,
): Followers {
  return words.flatMap(({ path, said }) => {
    const key = path[4] === 'targets' ? path[6] : path[4] === 'window' ? path[5] : undefined;
    if (path[2] !== 'points' || !['frequency', 'components', 'largest-at', 'of'].includes(String(key))) return [];
    const named = reference.exec(said);
    if (named === null) return [];
    const [, times, of, line, at, state, end] = named as unknown as readonly string[];
    const next = `${times}${ofNow(of!, line!)}/${line}${at}${stateNow(state!)}${end}`;
    return next === said ? [] : followed(text, path, next);
  });
}

function followed(text: string, path: Path, next: string): Followers {
  return rewordingEdits(text, path, next).map((edit) => ({ ...edit, words: `${placeWords(path)}: ${next.trim()}` }));
}

/** `pump-drive-end-loop, targets, overall velocity, largest-at` of a place within a machine. */
function placeWords(path: Path): string {
  const own = path.slice(2).filter((each) => each !== 'value' && each !== 'points');
  return own.map((each) => (typeof each === 'number' ? `${each + 1}.` : each)).join(', ');
}

/** Points that are drawn elsewhere: which element they sit at is told by words that name it. */
function displaced({ stated, name, to }: Renaming, what: Removable): readonly string[] {
  if (what === 'machine' || what === 'state' || what === 'shaft') return [];
  const called = <T extends { readonly name: string }>(each: T): T =>
    each.name === name ? { ...each, name: to } : each;
  const after: PlantMachine =
    what === 'element'
      ? {
          ...stated,
          train: { ...stated.train, elements: stated.train.elements.map(called) },
          points: stated.points.map((point) => ({
            ...point,
            statement: {
              ...point.statement,
              ...(point.statement.hears === undefined
                ? {}
                : { hears: point.statement.hears.map((each) => (each === name ? to : each)) }),
            },
          })),
        }
      : { ...stated, points: stated.points.map((point) => ({ ...point, statement: called(point.statement) })) };
  const places = pointPlaces(after);
  return pointPlaces(stated).flatMap((before, index) => {
    const now = places[index]?.on?.element;
    const was = before.on?.element;
    const same = now === (what === 'element' && was === name ? to : was);
    if (same) return [];
    return [
      `${places[index]!.name} is drawn ${now === undefined ? 'at no element' : `at ${now}`}: ${before.on?.by ?? 'what is stated'} named ${was ?? 'none'}`,
    ];
  });
}

/** Words of a person that name it are left as they are. */
function spoken({ words, name }: Renaming, follows: Followers): readonly string[] {
  const changed = new Set(follows.map(({ path }) => path.join('\n')));
  const whole = new RegExp(`(?<![\\p{L}\\p{N}_-])${escaped(name)}(?![\\p{L}\\p{N}_-])`, 'u');
  return words
    .filter(({ path, said }) => said !== name && !changed.has(path.join('\n')) && whole.test(said) && /\s/.test(said))
    .map(({ path, said }) => `‘${said.trim()}’, ${placeWords(path)}`);
}

const escaped = (text: string) => text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
