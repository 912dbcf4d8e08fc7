import { Refusal } from '@soundpost/core';
import { always, command, manyArguments, switchFlag } from './command.ts';
import { explainMachine, explainSheet, sheetNames } from './explain-number.ts';
import { explainPoint } from './explain-point.ts';
import { blank, heading, paragraph } from './layout/line.ts';
import type { Manner } from './manner.ts';
import type { Outcome } from './outcome.ts';
import { readPlant } from './plant/read-plant.ts';
import type { Surroundings } from './surroundings.ts';
import { capital } from './text/values-text.ts';
import type { Topic } from './topics/topic.ts';
import { topics, topicsCalled } from './topics/topics.ts';

export const explain = command({
  name: 'explain',
  summary: 'Why: a rule, a kind, a source, a formula; or every verdict or number of a point',
  description:
    'Explains a topic by its name: a rule (chain/overload), a working, a kind of part or machine element, a source, a ' +
    'quantity, a table of limits; without a name it lists them. With a plant file and a point it explains every verdict ' +
    'about the chosen chain in three depths: a sentence, the numbers, the formula with the numbers put in and its source. ' +
    `A sheet in place of the target (${sheetNames.join(', ')}) explains its numbers the same way, and a machine in ` +
    'place of the point those of its shafts, lines and limits; words after it keep those with them in the title.',
  arguments: {
    words: manyArguments(
      'TOPIC or PLANT POINT [TARGET or SHEET]',
      'A topic; or a plant file, a point or machine and perhaps a target, or a sheet and words of a number',
    ),
  },
  flags: {
    flips: switchFlag('With a point: at which value of each assumption the verdict would turn (takes seconds)'),
  },
  examples: [
    'soundpost explain chain/overload',
    'soundpost explain rolling-bearing',
    'soundpost explain examples/raw-water-pump/plant.yaml pump-drive-end-horizontal "bearing bursts"',
    'soundpost explain examples/raw-water-pump/plant.yaml pump-drive-end-loop alarms alert',
    'soundpost explain examples/raw-water-pump/plant.yaml P-301 outer-ring',
  ],
  whenAllowed: always,
  async perform(surroundings, { words, flips }, manner) {
    const [first, point, target, ...rest] = words;
    if (first === undefined) return topicList(manner);
    if (point === undefined)
      return isFile(first) ? askForPoint(surroundings, first) : explainTopics(topicsCalled(first), manner);
    const { plant } = await readPlant(surroundings, first);
    const isMachine = plant.machines.some((each) => each.name === point);
    const isSheet = target !== undefined && (sheetNames as readonly string[]).includes(target);
    const [sought, ...beyond] = isMachine ? [target, ...rest] : rest;
    if ((isMachine || isSheet) && beyond.length === 0) {
      return isMachine
        ? explainMachine(surroundings, first, { machine: point, words: sought }, manner)
        : explainSheet(surroundings, first, { point, sheet: target!, words: sought }, manner);
    }
    if (rest.length > 0) {
      throw new Refusal({
        read: words.join(' '),
        expected: 'a plant file, a point and at most one target',
        suggestion: 'A name of several words stands in quotes.',
      });
    }
    return explainPoint(surroundings, first, { point, target, flips }, manner);
  },
});

function isFile(word: string): boolean {
  return /\.ya?ml$/i.test(word);
}

async function askForPoint(surroundings: Surroundings, path: string): Promise<never> {
  const { plant } = await readPlant(surroundings, path);
  const points = plant.machines.flatMap((machine) =>
    machine.points.map((each) => `${machine.name}/${each.statement.name}`),
  );
  throw new Refusal({
    read: path,
    expected: `a point of the plant after it: ${points.map((each) => `'${each}'`).join(', ')}`,
  });
}

function topicList({ width }: Manner): Outcome {
  const groups = new Map<string, Topic[]>();
  for (const each of topics) groups.set(each.is, [...(groups.get(each.is) ?? []), each]);
  return {
    exit: 0,
    lines: [
      ...paragraph("What can be explained: 'soundpost explain NAME', or a plant file and a point.", width),
      ...[...groups].flatMap(([is, each]) => [
        blank,
        ...heading(capital(is), width),
        ...paragraph(`  ${each.map((topic) => topic.name).join(', ')}`, width),
      ]),
    ],
    json: { topics: topics.map(({ is, name, title }) => ({ is, name, title })) },
  };
}

function explainTopics(found: readonly Topic[], manner: Manner): Outcome {
  return {
    exit: 0,
    lines: found.flatMap((topic, index) => [
      ...(index === 0 ? [] : [blank]),
      ...heading(`${topic.name} (${topic.is})${topic.title === topic.name ? '' : `: ${topic.title}`}`, manner.width),
      ...topic.lines(manner),
    ]),
    json: { topics: found.map((topic) => topic.json) },
  };
}
