import type { AnyCommand, Argument, Flag } from '@soundpost/commands';
import {
  type Application,
  type ApplicationContext,
  buildApplication,
  buildCommand,
  buildRouteMap,
  formatMessageForArgumentScannerError,
  text_en,
} from '@stricli/core';

/** What was asked for, once the line has been understood. */
export interface Asked {
  readonly command: AnyCommand;
  readonly given: Readonly<Record<string, unknown>>;
}

type Parsed = Readonly<Record<string, unknown>>;

/** Words after the command and with two dashes, as the parser of the command line wants them described. */
export function application(
  commands: readonly AnyCommand[],
  ask: (asked: Asked) => void,
): Application<ApplicationContext> {
  const routes = Object.fromEntries(commands.map((each) => [each.name, routeOf(each, ask)]));
  return buildApplication(buildRouteMap({ routes, docs: { brief: 'Soundpost' } }), {
    name: 'soundpost',
    scanner: { caseStyle: 'allow-kebab-for-camel', allowArgumentEscapeSequence: true },
    documentation: { disableAnsiColor: true },
    localization: {
      text: {
        ...text_en,
        noCommandRegisteredForInput: ({ input, corrections }) =>
          `There is no command '${input}'. ${
            corrections.length > 0 ? `Did you mean ${corrections.join(' or ').replaceAll('`', "'")}? ` : ''
          }Commands: ${commands.map((each) => each.name).join(', ')}.`,
        exceptionWhileParsingArguments: (error) => parsingText(error),
      },
    },
  });
}

function parsingText(error: unknown): string {
  const message = formatMessageForArgumentScannerError(error as never, {});
  return /[.?!]$/.test(message) ? message : `${message}.`;
}

function routeOf(each: AnyCommand, ask: (asked: Asked) => void) {
  const places = Object.entries(each.arguments as Readonly<Record<string, Argument>>);
  const flags = Object.entries(each.flags as Readonly<Record<string, Flag>>);
  return buildCommand<Parsed, string[], ApplicationContext>({
    docs: { brief: each.summary },
    parameters: {
      flags: { ...Object.fromEntries(flags.map(([name, flag]) => [name, flagOf(flag)])), ...common },
      positional: positionalOf(places.map(([, place]) => place)),
    } as never,
    func(this: ApplicationContext, read: Parsed, ...words: string[]) {
      ask({ command: each, given: { ...givenWords(places, words), ...givenFlags(flags, read), ...commonOf(read) } });
    },
  });
}

const common = {
  json: { kind: 'boolean', brief: 'Print JSON', optional: true, withNegated: false },
  units: { kind: 'enum', values: ['metric', 'us'], brief: 'Units shown', optional: true },
  decimal: { kind: 'enum', values: ['point', 'comma'], brief: 'Decimal sign shown', optional: true },
  noColor: { kind: 'boolean', brief: 'No colour', optional: true, withNegated: false },
  debug: { kind: 'boolean', brief: 'Show where a fault of ours happened', optional: true, withNegated: false },
} as const;

function commonOf(read: Parsed): Parsed {
  return Object.fromEntries(Object.keys(common).map((name) => [name, read[name]]));
}

function flagOf(flag: Flag): unknown {
  if (flag.is === 'switch') return { kind: 'boolean', brief: flag.meaning, optional: true, withNegated: false };
  const parse = flag.is === 'names' ? namesIn : (text: string) => text;
  return { kind: 'parsed', parse, brief: flag.meaning, placeholder: flag.placeholder.toLowerCase(), optional: true };
}

function namesIn(text: string): readonly string[] {
  return text
    .split(',')
    .map((each) => each.trim())
    .filter((each) => each !== '');
}

function positionalOf(places: readonly Argument[]): unknown {
  const many = places.find((each) => each.many);
  const required = places.filter((each) => each.optional === undefined && each.many === undefined);
  const parameter = (place: Argument) => ({
    brief: place.meaning,
    placeholder: place.placeholder,
    parse: (text: string) => text,
    ...(place.optional === undefined ? {} : { optional: true }),
  });
  if (many === undefined) return { kind: 'tuple', parameters: places.map(parameter) };
  return { kind: 'array', parameter: parameter(places[0]!), minimum: required.length };
}

function givenWords(places: readonly (readonly [string, Argument])[], words: readonly string[]): Parsed {
  return Object.fromEntries(
    places.map(([name, place], index) => [name, place.many === true ? words.slice(index) : words[index]]),
  );
}

function givenFlags(flags: readonly (readonly [string, Flag])[], read: Parsed): Parsed {
  return Object.fromEntries(
    flags.map(([name, flag]) => [name, flag.is === 'switch' ? read[name] === true : read[name]]),
  );
}
