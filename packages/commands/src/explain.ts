import { Refusal } from '@soundpost/core';
import { always, command, manyArguments, switchFlag } from './command.ts';
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
  summary: 'Why: a rule, a kind, a source, a formula; or every verdict of a point',
  description:
    'Explains a topic by its name: a rule (chain/overload), a working, a kind of part or machine element, a source, a ' +
    'quantity, a table of limits; without a name it lists them. With a plant file and a point it explains every verdict ' +
    'about the chosen chain in three depths: a sentence, the numbers, the formula with the numbers put in and its source.',
  arguments: {
    words: manyArguments('TOPIC or PLANT POINT [TARGET]', 'A topic; or a plant file, a point and perhaps a target'),
  },
  flags: {
    flips: switchFlag('With a point: at which value of each assumption the verdict would turn (takes seconds)'),
  },
  examples: [
    'soundpost explain chain/overload',
    'soundpost explain rolling-bearing',
    'soundpost explain examples/raw-water-pump/plant.yaml pump-drive-end-horizontal "bearing bursts"',
  ],
  whenAllowed: always,
  async perform(surroundings, { words, flips }, manner) {
    const [first, point, target, ...rest] = words;
    if (first === undefined) return topicList(manner);
    if (point === undefined)
      return isFile(first) ? askForPoint(surroundings, first) : explainTopics(topicsCalled(first), manner);
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
