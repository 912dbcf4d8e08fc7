import { blocks, Refusal } from '@soundpost/core';
import { openRecording, type ReadingChoices, type Separator, separators, surveyed } from '@soundpost/files';
import { withFactsBeside } from './accept/facts-beside.ts';
import { always, argument, command, textFlag } from './command.ts';
import { recordingJson } from './json/recording-json.ts';
import { recordingLines } from './text/recording-text.ts';

const decimals = ['point', 'comma'] as const;

export const record = command({
  name: 'record',
  summary: 'What the file of a recording says, and what it does not say',
  description:
    'Reads a recording (WAV, Universal File dataset 58 and 58b, MAT of version 5, text in columns) from end to end, a ' +
    'piece at a time, and prints its channels with sampling rate, unit and range; what it does not say and has to be asked ' +
    'before anything is measured in it; and where its head and its data contradict each other. Nothing is guessed: a text ' +
    'whose decimal sign and separator cannot be told apart is refused with the question, and --sign and --separator ' +
    'answer it.',
  arguments: { file: argument('FILE', 'The recording') },
  flags: {
    sign: textFlag('SIGN', 'Decimal sign in the file, where it cannot be told: point or comma'),
    separator: textFlag('NAME', `Between the columns of a text, where it cannot be told: ${separators.join(', ')}`),
  },
  examples: ['soundpost record evidence/recordings/eight-cases-text.unv'],
  whenAllowed: always,
  async perform(surroundings, { file: path, sign, separator }, manner) {
    const choices: ReadingChoices = {
      ...(sign === undefined ? {} : { decimal: oneOf(decimals, sign, '--sign') }),
      ...(separator === undefined ? {} : { separator: oneOf<Separator>(separators, separator, '--separator') }),
    };
    const file = await surroundings.openFile(path);
    try {
      surroundings.step(`reading ${path}`);
      const survey = await surveyed(
        await withFactsBeside(surroundings, path, await openRecording(file, path, choices)),
      );
      return {
        exit: blocks(survey.recording.findings) ? 1 : 0,
        lines: recordingLines(path, survey, manner),
        json: { file: path, ...recordingJson(survey) },
      };
    } finally {
      await file.close();
    }
  },
});

function oneOf<Word extends string>(words: readonly Word[], typed: string, flag: string): Word {
  const found = words.find((each) => each === typed.trim().toLowerCase());
  if (found !== undefined) return found;
  throw new Refusal({ read: `${flag} ${typed}`, expected: words.join(' or ') });
}
