import { readFileSync } from 'node:fs';
import {
  type AnyCommand,
  commands,
  grave,
  type Line,
  manner,
  type Outcome,
  pageWidth,
  performed,
  type Surroundings,
  type Wishes,
} from '@soundpost/commands';
import { nearest } from '@soundpost/core';
import { run as runApplication } from '@stricli/core';
import { apology } from './apology.ts';
import { type Asked, application } from './application.ts';
import { commandHelp, generalHelp } from './help.ts';
import { noProgress, progressLine } from './progress.ts';
import { Interrupted, realSurroundings } from './real-surroundings.ts';

/** Exit code of a fault of ours (EX_SOFTWARE of the BSD sysexits). */
const ourFault = 70;

/** Exit code of a command that was stopped by Ctrl-C: 128 and the number of the signal, as shells count. */
const stoppedByHand = 130;

const version: string = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).version;

/** Does what the words after `soundpost` say, and gives the exit code. */
export async function run(words: readonly string[]): Promise<number> {
  endQuietlyWithReader();
  const line = commandFirst(words);
  const wished = helpWished(line);
  if (wished !== undefined) {
    print(process.stdout, wished, line);
    return 0;
  }
  const read = await understood(line);
  if ('refusal' in read) return told({ exit: 2, ...refusalOf(read.refusal) }, line);
  const progress = process.stderr.isTTY ? progressLine() : noProgress;
  try {
    const surroundings = realSurroundings(progress.step);
    const outcome = await answered(read, surroundings);
    await progress.end();
    return told(outcome, line);
  } catch (error) {
    await progress.end();
    return error instanceof Interrupted ? stopped(error, line) : apologise(error, line);
  }
}

/** Whoever reads our output may stop early (`| head`): that is no fault, and nothing more is to be said. */
function endQuietlyWithReader(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
}

async function answered({ command, given }: Asked, surroundings: Surroundings): Promise<Outcome> {
  return performed(command, surroundings, given, manner(given as Wishes));
}

/** Flags of every command may stand before it: they are moved behind. */
function commandFirst(words: readonly string[]): readonly string[] {
  const at = words.findIndex((word, index) => !word.startsWith('-') && !takesValue(words[index - 1]));
  return at <= 0 ? words : [words[at]!, ...words.slice(0, at), ...words.slice(at + 1)];
}

function takesValue(word: string | undefined): boolean {
  return word === '--units' || word === '--decimal';
}

/** Help or version, where one of them is asked for. */
function helpWished(line: readonly string[]): readonly Line[] | undefined {
  const escaped = line.indexOf('--');
  const before = escaped < 0 ? line : line.slice(0, escaped);
  const [first, second] = before;
  if (first === undefined) return generalHelp(commands, version);
  if (first === '--version' || first === 'version') return [{ text: version }];
  const help = before.includes('--help') || before.includes('-h');
  if (!help && first !== 'help') return undefined;
  const name = first === 'help' ? second : first;
  const command = commands.find((each) => each.name === name);
  if (command !== undefined) return commandHelp(command);
  return name === undefined || name.startsWith('-') ? generalHelp(commands, version) : undefined;
}

/** The parsed line, or why it cannot be understood. */
async function understood(line: readonly string[]): Promise<Asked | { readonly refusal: string }> {
  const asked: { now?: Asked } = {};
  const said: string[] = [];
  const collected = { write: (text: string) => said.push(text) };
  const context = { process: { stdout: collected, stderr: collected, env: {} } };
  await runApplication(
    application(commands, (each) => {
      asked.now = each;
    }),
    line,
    context as never,
  );
  return asked.now ?? { refusal: explained(said.join('').trim(), line) };
}

/** What the parser says, and for a flag that does not exist the one probably meant. */
function explained(said: string, line: readonly string[]): string {
  const name = line.find((word) => !word.startsWith('-'));
  const command: AnyCommand | undefined = commands.find((each) => each.name === name);
  const more =
    command === undefined ? "'soundpost --help' lists the commands." : `See 'soundpost ${command.name} --help'.`;
  const near =
    command === undefined && name !== undefined
      ? nearest(
          name,
          commands.map((each) => each.name),
        )
      : undefined;
  const meant = near === undefined || said.includes('Did you mean') ? '' : ` Did you mean '${near}'?`;
  return `${said}${meant} ${more}`;
}

function refusalOf(sentence: string): Pick<Outcome, 'lines' | 'json'> {
  return { lines: grave(sentence, pageWidth), json: { refused: [{ expected: sentence }] } };
}

/** Text for people on one of the two streams, JSON always on standard output. */
function told(outcome: Omit<Outcome, 'exit'> & { readonly exit: number }, line: readonly string[]): number {
  if (line.includes('--json')) process.stdout.write(`${JSON.stringify(outcome.json, null, 2)}\n`);
  else
    print(outcome.exit === 2 || outcome.exit === stoppedByHand ? process.stderr : process.stdout, outcome.lines, line);
  return outcome.exit;
}

function print(stream: NodeJS.WriteStream, lines: readonly Line[], line: readonly string[]): void {
  const coloured =
    stream.isTTY === true &&
    !line.includes('--no-color') &&
    (process.env.NO_COLOR ?? '') === '' &&
    process.env.TERM !== 'dumb';
  stream.write(`${lines.map((each) => (coloured ? toned(each) : each.text)).join('\n')}\n`);
}

function toned({ text, tone }: Line): string {
  if (tone === 'heading') return `\u001b[1m${text}\u001b[0m`;
  return tone === 'grave' ? `\u001b[1;35m${text}\u001b[0m` : text;
}

function stopped({ folder }: Interrupted, line: readonly string[]): number {
  const sentence = `Stopped: nothing was written to ${folder}; what stood there stands as it was.`;
  return told({ exit: stoppedByHand, ...refusalOf(sentence) }, line);
}

function apologise(error: unknown, line: readonly string[]): number {
  print(process.stderr, apology(error, line.includes('--debug')), line);
  return ourFault;
}
