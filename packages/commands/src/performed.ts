import { Refusal, type RefusalReason, refusalSentence } from '@soundpost/core';
import { type FileRefusal, UnreadableFile } from '@soundpost/files';
import type { AnyCommand } from './command.ts';
import { blank, grave, type Line, plainLines } from './layout/line.ts';
import type { Manner } from './manner.ts';
import type { Outcome } from './outcome.ts';
import type { Surroundings } from './surroundings.ts';

/** Does what a command says. Input that cannot be read becomes an outcome; what is our own fault is thrown on. */
export async function performed(
  command: AnyCommand,
  surroundings: Surroundings,
  given: Readonly<Record<string, unknown>>,
  manner: Manner,
): Promise<Outcome> {
  try {
    const hindrance = await command.whenAllowed.hindrance(surroundings);
    if (hindrance !== undefined) {
      return refused({ read: command.name, expected: `this command ${command.whenAllowed.words}` }, manner, hindrance);
    }
    return await command.perform(surroundings, given as never, manner);
  } catch (error) {
    if (error instanceof UnreadableFile) return unreadable(error, manner);
    if (error instanceof Refusal) return refused(error.reason, manner);
    throw error;
  }
}

/** Exit 2, the sentence, and the same for scripts. */
export function refused(reason: RefusalReason, manner: Manner, more?: string): Outcome {
  const sentence = refusalSentence(reason).replace(/^r/, 'R');
  return {
    exit: 2,
    lines: grave([sentence, ...(more === undefined ? [] : [more])].join(' '), manner.width),
    json: { refused: [{ ...reason }] },
  };
}

function unreadable(error: UnreadableFile, manner: Manner): Outcome {
  const { refusals } = error;
  const many =
    refusals.length > 1 ? [blank, { text: `${refusals.length} things in ${error.file} cannot be read.` }] : [];
  return {
    exit: 2,
    lines: [...refusals.flatMap((each, index) => [...(index === 0 ? [] : [blank]), ...placed(each, manner)]), ...many],
    json: {
      refused: refusals.map(({ file, line, column, path, read, expected, suggestion }) => ({
        file,
        line,
        column,
        path,
        read,
        expected,
        ...(suggestion === undefined ? {} : { suggestion }),
      })),
    },
  };
}

/** `plant.yaml:12:5: machines/P-301: read …`, and below it as much of the line as the page takes, with a caret. */
function placed(refusal: FileRefusal, manner: Manner): readonly Line[] {
  const path = refusal.path === '' ? '' : `${refusal.path}: `;
  const head = `${refusal.file}:${refusal.line}:${refusal.column}: ${path}${refusalSentence(refusal)}`;
  return [...grave(head, manner.width), ...excerpt(refusal, manner.width)];
}

function excerpt({ line, excerpt: shown }: FileRefusal, width: number): readonly Line[] {
  if (shown === undefined) return [];
  const margin = `${String(line).padStart(5)} | `;
  const room = width - margin.length;
  const signs = [...shown.text];
  const from = shown.before < room - 10 ? 0 : Math.min(shown.before - Math.floor(room / 2), signs.length - 1);
  const cut = signs.slice(from, from + room).join('');
  return plainLines([`${margin}${cut}`, `${' '.repeat(margin.length + shown.before - from)}^`]);
}
