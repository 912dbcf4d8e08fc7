import { Refusal } from '@soundpost/core';
import { type Allowance, argument, command } from './command.ts';
import { bullet, heading, paragraph } from './layout/line.ts';
import { unknownName } from './plant/point-called.ts';
import { type ListEdit, namesOf, type Scaffold } from './scaffold/scaffold.ts';
import { scaffolds } from './scaffold/scaffolds.ts';
import { pathIn, type Surroundings } from './surroundings.ts';

const insideCheckout: Allowance = {
  words: 'inside a checkout of the source only',
  hindrance: async (surroundings) =>
    (await stands(surroundings, 'packages/core/src/rooms.ts'))
      ? undefined
      : `There is no source in '${surroundings.root}'.`,
};

export const newThing = command({
  name: 'new',
  summary: 'Begin a kind, rule, source or working: its file, its test, its line',
  description:
    'Writes the file of a new kind of thing with a test beside it, and adds the one line by which it is known. What is ' +
    'begun compiles and its test runs; the numbers in it are to be replaced by yours. Nothing is written over.',
  arguments: {
    kind: argument('KIND-OF-THING', scaffolds.map((each) => each.word).join(', ')),
    name: argument('NAME', 'Its name in kebab-case: shaft-rider'),
  },
  flags: {},
  examples: ['soundpost new mount-kind bayonet', 'npm run new -- chain-rule settling-time'],
  whenAllowed: insideCheckout,
  async perform(surroundings, { kind, name }, { width }) {
    const scaffold = scaffoldCalled(kind);
    if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(name)) {
      throw new Refusal({ read: name, expected: "a name in kebab-case, as it will stand in files: 'shaft-rider'" });
    }
    const names = namesOf(name);
    const files = scaffold.files(names);
    for (const { path } of files) await refuseTaken(surroundings, path);
    // Every edit is made before anything is written: a list that is not as expected leaves the checkout as it was.
    const lists = await editedLists(surroundings, scaffold.lists(names));
    for (const { path, content } of files) {
      await surroundings.writeFile(pathIn(surroundings.root, path), content, { overwrite: false });
    }
    for (const { path, content } of lists) {
      await surroundings.writeFile(pathIn(surroundings.root, path), content, { overwrite: true });
    }
    return {
      exit: 0,
      lines: [
        ...heading(`Begun: ${name}, ${scaffold.meaning}`, width),
        ...files.flatMap(({ path }) => bullet(`written: ${path}`, width)),
        ...lists.flatMap(({ path }) => bullet(`one line more: ${path}`, width)),
        ...paragraph('Now put in what it is and whose word it rests on, then run its test and `npm run ready`.', width),
      ],
      json: { written: files.map(({ path }) => path), listed: lists.map(({ path }) => path) },
    };
  },
});

function scaffoldCalled(word: string): Scaffold {
  const found = scaffolds.find((each) => each.word === word);
  if (found !== undefined) return found;
  throw unknownName(
    word,
    'a kind of thing',
    scaffolds.map((each) => each.word),
  );
}

async function stands(surroundings: Surroundings, path: string): Promise<boolean> {
  try {
    await surroundings.readBytes(pathIn(surroundings.root, path));
    return true;
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}

async function refuseTaken(surroundings: Surroundings, path: string): Promise<void> {
  if (!(await stands(surroundings, path))) return;
  throw new Refusal({ read: path, expected: 'a name that is not taken', suggestion: 'Nothing was written.' });
}

/** Each list once, with all its edits. */
async function editedLists(surroundings: Surroundings, edits: readonly ListEdit[]) {
  const texts = new Map<string, string>();
  for (const { path, edited } of edits) {
    const text =
      texts.get(path) ?? new TextDecoder().decode(await surroundings.readBytes(pathIn(surroundings.root, path)));
    texts.set(path, edited(text));
  }
  return [...texts].map(([path, content]) => ({ path, content }));
}
