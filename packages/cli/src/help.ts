import {
  type AnyCommand,
  type Argument,
  blank,
  type Flag,
  heading,
  type Line,
  pageWidth,
  paragraph,
  wrapped,
} from '@soundpost/commands';

const about =
  'Soundpost helps the vibration-instrumentation engineer of a plant decide where and how to measure: what each ' +
  'point must capture, which measuring chain does it, by how much, and why.';

const common: readonly (readonly [string, string])[] = [
  ['--json', 'Print JSON for scripts instead of text (docs/json.md)'],
  ['--units metric|us', 'Units shown; input is read in whatever unit it carries'],
  ['--decimal point|comma', 'Decimal sign shown'],
  ['--no-color', 'No colour, as NO_COLOR in the environment; colour is never the only sign'],
  ['--debug', 'Show where in the program a fault of ours happened'],
  ['--help, --version', 'This text; the version'],
];

const exits: readonly (readonly [string, string])[] = [
  ['0', 'done, and nothing blocks'],
  ['1', 'a finding blocks'],
  ['2', 'the input cannot be read'],
  ['70', 'a fault of Soundpost itself'],
];

/** Help for everything. */
export function generalHelp(commands: readonly AnyCommand[], version: string): readonly Line[] {
  return [
    ...heading(`Soundpost ${version}`, pageWidth),
    ...paragraph(about, pageWidth),
    blank,
    ...heading('Usage', pageWidth),
    { text: '  soundpost COMMAND …' },
    { text: '  soundpost COMMAND --help' },
    blank,
    ...heading('Commands', pageWidth),
    ...twoColumns(commands.map((each) => [each.name, each.summary] as const)),
    blank,
    ...heading('Flags of every command', pageWidth),
    ...twoColumns(common),
    blank,
    ...heading('Exit codes', pageWidth),
    ...twoColumns(exits),
    blank,
    ...heading('To begin with', pageWidth),
    { text: '  soundpost demo' },
    { text: '  soundpost explain chain/overload' },
  ];
}

/** Help for one command. */
export function commandHelp(command: AnyCommand): readonly Line[] {
  const places = Object.values(command.arguments as Readonly<Record<string, Argument>>);
  const flags = Object.entries(command.flags as Readonly<Record<string, Flag>>);
  const usage = [
    'soundpost',
    command.name,
    ...places.map(placeText),
    ...flags.map(([name, flag]) => `[${flagText(name, flag)}]`),
  ];
  return [
    ...heading(`soundpost ${command.name}: ${command.summary}`, pageWidth),
    ...paragraph(command.description, pageWidth),
    ...(command.whenAllowed.words === 'always' ? [] : paragraph(`Allowed ${command.whenAllowed.words}.`, pageWidth)),
    blank,
    ...heading('Usage', pageWidth),
    ...wrapped(`  ${usage.join(' ')}`, pageWidth, '    ').map((text) => ({ text })),
    ...(places.length === 0 ? [] : [blank, ...heading('Arguments', pageWidth)]),
    ...twoColumns(places.map((place) => [place.placeholder, place.meaning] as const)),
    blank,
    ...heading('Flags', pageWidth),
    ...twoColumns([...flags.map(([name, flag]) => [flagText(name, flag), flag.meaning] as const), ...common]),
    blank,
    ...heading('Examples', pageWidth),
    ...command.examples.flatMap((each) => wrapped(`  ${each}`, pageWidth, '    ').map((text) => ({ text }))),
  ];
}

function placeText({ placeholder, optional, many }: Argument): string {
  if (many === true) return `[${placeholder} …]`;
  return optional === true ? `[${placeholder}]` : placeholder;
}

function flagText(name: string, flag: Flag): string {
  const kebab = name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  return flag.is === 'switch' ? `--${kebab}` : `--${kebab} ${flag.placeholder}`;
}

function twoColumns(rows: readonly (readonly [string, string])[]): readonly Line[] {
  const column = Math.max(0, ...rows.map(([left]) => left.length)) + 4;
  return rows.flatMap(([left, right]) => {
    const lines = wrapped(right, pageWidth - column);
    return lines.map((text, index) => ({ text: `  ${(index === 0 ? left : '').padEnd(column - 2)}${text}` }));
  });
}
