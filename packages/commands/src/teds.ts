import {
  blocks,
  byteList,
  bytesInLayout,
  Refusal,
  type Teds,
  type Template,
  type Told,
  tedsDoubts,
  tedsOf,
  templateKinds,
  transcribedByUser,
  transcribedTemplate,
  typedValues,
} from '@soundpost/core';
import { readYaml, tedsLayoutReader } from '@soundpost/files';
import { always, command, manyArguments, switchFlag, textFlag } from './command.ts';
import { findingJson } from './json/finding-json.ts';
import { missingJson } from './json/values-json.ts';
import { blank, type Line, labelled, paragraph } from './layout/line.ts';
import type { Surroundings } from './surroundings.ts';
import { findingsLines } from './text/finding-text.ts';
import { type LayoutSaid, tedsLines } from './text/teds-text.ts';

const builtIn: LayoutSaid = { origin: 'built in, not read in the standard', edition: 'IEEE 1451.4:2004, second-hand' };

const howToState =
  '  What is not known here can be stated: copy the layout from a licensed edition and give it with --layout (docs/teds.md).';

export const teds = command({
  name: 'teds',
  summary: 'What the memory of a transducer says, field by field',
  description:
    'Reads the bytes of a transducer electronic data sheet into named fields. Layouts that could not be found in print are ' +
    'not guessed: copy yours down from a licensed edition into a file (docs/teds.md) and name it with --layout. With ' +
    '--encode it goes the other way: NAME=VALUE of every field in, bytes out.',
  arguments: { words: manyArguments('BYTES', 'The bytes, as 64 70 1E or 64701E; with --encode NAME=VALUE') },
  flags: {
    layout: textFlag('FILE', 'A layout copied from a licensed edition'),
    encode: switchFlag('Write bytes from values'),
  },
  examples: [
    'soundpost teds 00 00 00 00 00 00 00 00 64 70 1E 0D 00 00 00 00 00 00 00 00 00 00 06',
    'soundpost teds 28C001400CD204006CF49A0667B8A0040100 --layout examples/teds/invented-layout.yaml --json',
  ],
  whenAllowed: always,
  async perform(surroundings, { words, layout: path, encode }, manner) {
    const given = path === undefined ? undefined : await layoutIn(surroundings, path);
    const list = encode ? written(words, given?.template) : byteList(words.join(' '));
    const read = tedsOf(list.bytes, given?.template);
    const said = given?.said ?? builtIn;
    const findings = tedsDoubts(list, read);
    const hexadecimal = list.bytes.map((byte) => byte.toString(16).padStart(2, '0').toUpperCase()).join(' ');
    const bytesLines: readonly Line[] = encode ? [...labelled('Bytes', hexadecimal, manner.width, '', 8), blank] : [];
    return {
      exit: blocks(findings) ? 1 : 0,
      lines: [
        ...bytesLines,
        ...tedsLines(read, said, manner),
        ...(given === undefined && read.bitsLeft >= 8 ? paragraph(howToState, manner.width, '  ') : []),
        ...(findings.length === 0 ? [] : [blank, ...findingsLines(findings, manner)]),
      ],
      json: {
        bytes: hexadecimal,
        notation: list.notation,
        ...tedsJson(read, said),
        findings: findings.map(findingJson),
      },
    };
  },
});

async function layoutIn(surroundings: Surroundings, path: string) {
  const { value } = readYaml(await surroundings.readBytes(path), path, tedsLayoutReader);
  return { template: transcribedTemplate(value), said: { origin: transcribedByUser, edition: value.edition } };
}

const writable: readonly Template[] = templateKinds.filter((each: Template) => each.sections.length > 0);

/** The bytes that state these values; without a layout given, `template=25` names one that is built in. */
function written(words: readonly string[], given: Template | undefined) {
  const pairs = words.map(named);
  const typed = Object.fromEntries(pairs);
  const twice = pairs.find(([name], index) => pairs.findIndex(([other]) => other === name) < index);
  if (twice !== undefined) throw new Refusal({ read: twice.join('='), expected: 'each name once' });
  const { template: id, ...values } = typed;
  const layout: Template | undefined = given ?? writable.find((each) => String(each.id) === id);
  if (layout === undefined || (id !== undefined && id !== String(layout.id))) {
    const ids = given === undefined ? writable.map((each) => each.id) : [given.id];
    throw new Refusal({
      read: `template=${id ?? ''}`,
      expected: `${ids.map((each) => `'template=${each}'`).join(' or ')}${given === undefined ? ', or --layout FILE' : ''}`,
    });
  }
  return { bytes: bytesInLayout(layout, typedValues(layout, values)), notation: 'hexadecimal', certain: true } as const;
}

function named(word: string): readonly [string, string] {
  const equals = word.indexOf('=');
  if (equals > 0) return [word.slice(0, equals).trim(), word.slice(equals + 1).trim()];
  throw new Refusal({ read: word, expected: 'NAME=VALUE for every field, such as serial=1234' });
}

function tedsJson({ told, template, notKnown, bitsRead, bitsLeft }: Teds, layout: LayoutSaid) {
  const valueOrUnknown = ({ name, value }: Told) =>
    value ?? missingJson([{ of: 'the data sheet in memory', what: name }]);
  return {
    layout,
    ...(template === undefined ? {} : { template }),
    fields: told.map((each) => ({
      name: each.name,
      value: valueOrUnknown(each),
      ...(each.unit === undefined ? {} : { unit: each.unit }),
      code: each.code,
      from: each.from,
      bits: each.bits,
      ...(each.mayBeUnwritten ? { mayBeUnwritten: true } : {}),
    })),
    notKnown,
    bitsRead,
    bitsLeft,
  };
}
