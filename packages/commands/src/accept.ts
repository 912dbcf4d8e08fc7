import { blocks, comparison, design as designOf, type Missing } from '@soundpost/core';
import { type MeasuredSession, measuredSession } from './accept/measured-session.ts';
import { always, argument, command } from './command.ts';
import { comparisonJson } from './json/comparison-json.ts';
import { findingJson } from './json/finding-json.ts';
import { blank, bullet, grave, heading, type Line, labelled, paragraph } from './layout/line.ts';
import type { Manner } from './manner.ts';
import { readPlant } from './plant/read-plant.ts';
import { seed } from './seed.ts';
import { comparisonLines, notProvenLines } from './text/comparison-text.ts';
import { findingsLines } from './text/finding-text.ts';

export const accept = command({
  name: 'accept',
  summary: 'Whether the installed chains measure as designed, from recordings',
  description:
    'Reads a records file: which recording was made on which occasion (stopped, taps, power coming on, calibrator, running ' +
    '…), which channel is which measuring point, and what the recordings do not say themselves. Measures every channel, a ' +
    'piece at a time, and holds it against the chain as designed: expected, tolerance, found, and one of three verdicts: ' +
    'meets, fails, cannot tell. What fails has its rival causes with evidence and the next cheap test; what cannot be told ' +
    'says what would be needed. Nothing is guessed: what neither recording nor records file says is asked. Ends with 1 ' +
    'where a check fails.',
  arguments: {
    plant: argument('PLANT', 'A plant file'),
    records: argument('RECORDS', 'A records file'),
  },
  flags: {},
  examples: ['soundpost accept examples/acceptance/plant.yaml examples/acceptance/records.yaml'],
  whenAllowed: always,
  async perform(surroundings, { plant: path, records: recordsPath }, manner) {
    const { plant } = await readPlant(surroundings, path);
    const measured = await measuredSession(surroundings, recordsPath);
    surroundings.step('comparing with the design');
    const design = designOf(plant, seed);
    const compared = comparison(design, measured.records, {
      readings: measured.session.readings,
      serving: measured.serving,
    });
    const failed = compared.results.some((each) => each.verdict === 'fails');
    return {
      exit:
        failed || blocks(measured.findings) || measured.recordings.some(({ refused }) => refused !== undefined) ? 1 : 0,
      lines: [
        ...headLines(measured, manner),
        ...comparisonLines(compared, manner),
        ...notProvenLines(compared, manner),
        ...(measured.findings.length === 0
          ? []
          : [
              blank,
              ...heading('What the recordings contradict', manner.width),
              ...findingsLines(measured.findings, manner),
            ]),
        ...questionLines(measured.questions, manner),
      ],
      json: {
        recordings: measured.recordings,
        ...(comparisonJson(compared) as object),
        findings: measured.findings.map(findingJson),
        questions: measured.questions,
      },
    };
  },
});

function headLines({ session, recordings }: MeasuredSession, { width }: Manner): readonly Line[] {
  const { title } = session.head.values;
  return [
    ...heading(`Acceptance from recordings: ${title.known ? title.value : 'without a title'}`, width),
    ...recordings.flatMap(({ name, file, bytes, sha256, refused }) =>
      refused === undefined
        ? labelled(name, `${file}, ${bytes} bytes, SHA-256 ${sha256.slice(0, 16)}…`, width, '  ', 20)
        : grave(`  ✗ ${name}: ${refused}`, width, '    '),
    ),
  ];
}

function questionLines(questions: readonly Missing[], { width }: Manner): readonly Line[] {
  if (questions.length === 0) return [];
  return [
    blank,
    ...heading('Asked, since neither the recording nor the records file says it', width),
    ...questions.flatMap(({ of, what }) => bullet(`${of}: ${what}`, width, '  ', '?')),
    ...paragraph('  Answer under the channel in the records file.', width, '  '),
  ];
}
